using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Ramwright.Records.Ids;

/// <summary>The number of a job, such as <c>SM-0417</c>: the house's letters, a hyphen, four to seven digits.</summary>
public readonly record struct JobId : IRecordId<JobId>, IComparable<JobId>
{
    private JobId(string value) => Value = value;

    public string Value { get; }

    public static string Form => "one to four capitals, a hyphen and four to seven digits, such as SM-0417";

    /// <summary>The running number behind the hyphen.</summary>
    public int Number => int.Parse(Value.AsSpan(Value.IndexOf('-', StringComparison.Ordinal) + 1), CultureInfo.InvariantCulture);

    /// <summary>Makes the id with the house's letters and a running number from 1 to 9,999,999.</summary>
    /// <exception cref="FormatException">The letters are not one to four capitals, or the number is out of range.</exception>
    public static JobId Of(string letters, int number) => Parse(string.Create(CultureInfo.InvariantCulture, $"{letters}-{number:0000}"));

    /// <exception cref="FormatException">The text is no job number.</exception>
    public static JobId Parse(string text) => IdText.Checked<JobId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out JobId id)
    {
        id = default;
        var hyphen = text?.IndexOf('-', StringComparison.Ordinal) ?? -1;
        if (hyphen is < 1 or > 4 || text!.Length - hyphen - 1 is < 4 or > 7)
            return false;
        if (!text.AsSpan(0, hyphen).ContainsOnlyCapitals() || text.AsSpan(hyphen + 1).ContainsAnyExceptInRange('0', '9'))
            return false;
        id = new(text);
        return true;
    }

    public int CompareTo(JobId other) => string.CompareOrdinal(Value, other.Value);

    public static bool operator <(JobId a, JobId b) => a.CompareTo(b) < 0;
    public static bool operator >(JobId a, JobId b) => a.CompareTo(b) > 0;
    public static bool operator <=(JobId a, JobId b) => a.CompareTo(b) <= 0;
    public static bool operator >=(JobId a, JobId b) => a.CompareTo(b) >= 0;

    public override string ToString() => Value ?? "";
}

internal static class CapitalText
{
    public static bool ContainsOnlyCapitals(this ReadOnlySpan<char> text) => !text.ContainsAnyExceptInRange('A', 'Z');
}
