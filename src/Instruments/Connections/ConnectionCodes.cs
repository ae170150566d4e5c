namespace Ramwright.Instruments.Connections;

/// <summary>Codes of the mistakes that only a connection text can hold; each has its page in docs/reference/mistakes.</summary>
public static class ConnectionCodes
{
    public const string UnknownConnection = "unknown-connection";
    public const string BadPlace = "bad-place-of-device";
    public const string BadSerial = "bad-serial-line";
    public const string UnknownClause = "unknown-clause";
    public const string DuplicateClause = "duplicate-clause";
    public const string MissingClause = "missing-clause";
    public const string MissingValue = "missing-clause-value";
    public const string BadRegister = "bad-register";
    public const string ClauseConflict = "clause-conflict";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
        [UnknownConnection, BadPlace, BadSerial, UnknownClause, DuplicateClause, MissingClause, MissingValue, BadRegister, ClauseConflict];
}
