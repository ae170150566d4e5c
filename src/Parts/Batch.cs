namespace Ramwright.Parts;

/// <summary>A batch in stock: pieces of one number that came and age together.</summary>
/// <param name="Id">What the label on the bag says.</param>
/// <param name="Number">The number it was bought under.</param>
/// <param name="Count">Pieces left, zero or more.</param>
/// <param name="UsableThrough">The last day on which it may be fitted; null for what does not age.</param>
/// <param name="Received">The day it came.</param>
public sealed record Batch(string Id, string Number, int Count, DateOnly? UsableThrough, DateOnly Received)
{
    /// <summary>The last day of use of what was cured on a day and keeps for a shelf life; the day of cure counts as the first.</summary>
    public static DateOnly LastDay(DateOnly cured, TimeSpan shelfLife) => cured.AddDays(Math.Max(0, (int)shelfLife.TotalDays - 1));

    /// <summary>Whether it may be fitted on a day.</summary>
    public bool UsableOn(DateOnly day) => UsableThrough is not { } last || day <= last;
}
