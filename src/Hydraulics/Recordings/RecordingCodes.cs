namespace Ramwright.Hydraulics.Recordings;

/// <summary>Codes of the mistakes that a recording can hold; each has its page in docs/reference/mistakes.</summary>
public static class RecordingCodes
{
    public const string NotText = "not-text";
    public const string LineTooLong = "line-too-long";
    public const string AmbiguousSeparator = "ambiguous-separator";
    public const string MixedDecimal = "mixed-decimal";
    public const string MissingHeader = "missing-header";
    public const string MissingUnit = "missing-unit";
    public const string UnknownUnit = "unknown-unit";
    public const string BadNumber = "bad-number";
    public const string NoRow = "no-row";
    public const string NoTimeColumn = "no-time-column";
    public const string NoSignal = "no-signal";
    public const string NoSuchColumn = "no-such-column";
    public const string SensorNeedsScale = "sensor-needs-scale";
    public const string TimeBackwards = "time-backwards";
    public const string TimeStands = "time-stands";
    public const string RecordingTooLong = "recording-too-long";
}
