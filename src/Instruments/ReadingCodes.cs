namespace Ramwright.Instruments;

/// <summary>Codes of the mistakes that a text of readings can hold; each has its page in docs/reference/mistakes.</summary>
public static class ReadingCodes
{
    public const string TooLarge = "too-large";
    public const string NotText = "not-text";
    public const string TooManyLines = "too-many-lines";
    public const string LineTooLong = "line-too-long";
    public const string TooManyMistakes = "too-many-mistakes";
    public const string AmbiguousSeparator = "ambiguous-separator";
    public const string MixedDecimal = "mixed-decimal";
    public const string OpenQuote = "open-quote";
    public const string MissingHeader = "missing-header";
    public const string NoPeakColumn = "no-peak-column";
    public const string TwoPeakColumns = "two-peak-columns";
    public const string RecordingNotPeaks = "recording-not-peaks";
    public const string TooManyColumns = "too-many-columns";
    public const string MissingUnit = "missing-unit";
    public const string UnknownUnit = "unknown-unit";
    public const string UnitConflict = "unit-conflict";
    public const string UnitNeedsArea = "unit-needs-area";
    public const string NoReading = "no-reading";
    public const string MissingReading = "missing-reading";
    public const string BadNumber = "bad-number";
    public const string NotFinite = "not-finite";
    public const string NegativeReading = "negative-reading";
    public const string AbsurdValue = "absurd-value";
    public const string BadRunNumber = "bad-run-number";
    public const string DuplicateRun = "duplicate-run";
    public const string RunOutOfOrder = "run-out-of-order";
    public const string RunGap = "run-gap";
    public const string VoidWithoutCause = "void-without-cause";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        TooLarge, NotText, TooManyLines, LineTooLong, TooManyMistakes, AmbiguousSeparator, MixedDecimal, OpenQuote,
        MissingHeader, NoPeakColumn, TwoPeakColumns, RecordingNotPeaks, TooManyColumns, MissingUnit, UnknownUnit, UnitConflict,
        UnitNeedsArea, NoReading, MissingReading, BadNumber, NotFinite, NegativeReading, AbsurdValue, BadRunNumber, DuplicateRun,
        RunOutOfOrder, RunGap, VoidWithoutCause,
    ];
}
