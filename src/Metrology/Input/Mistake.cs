namespace Ramwright.Metrology.Input;

/// <summary>
/// A place in a text file; line and column count from 1 as editors count, length in characters (0: the whole line).
/// Line 0 means the file as a whole: it is not there, too large, or no text.
/// </summary>
public readonly record struct Place(string File, int Line, int Column, int Length)
{
    /// <summary>The file as a whole.</summary>
    public static Place Whole(string file) => new(file, 0, 0, 0);
}

/// <summary>Something wrong in what was given: where, what is wrong, how to mend it, and the code that <c>ramwright explain</c> takes.</summary>
/// <param name="At">Where it stands.</param>
/// <param name="What">What is wrong, one sentence without a full stop; further lines carry details.</param>
/// <param name="Mend">What to write instead.</param>
/// <param name="Code">Lower case with hyphens; each code has a page in docs/reference/mistakes.</param>
public sealed record Mistake(Place At, string What, string Mend, string Code)
{
    /// <summary>The line the place points to, for the excerpt; null when there is none to show.</summary>
    public string? Excerpt { get; init; }
}
