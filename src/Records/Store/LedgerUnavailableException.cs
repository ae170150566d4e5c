namespace Ramwright.Records.Store;

/// <summary>The ledger cannot be used just now: the disk, the file or its lock. Nothing was written by half.</summary>
/// <param name="code">The mistake's code, which has a page: <c>disk-full</c>, <c>ledger-locked</c>, <c>ledger-damaged</c> ...</param>
/// <param name="reason">What is wrong, for the person.</param>
/// <param name="remedy">What to do.</param>
public sealed class LedgerUnavailableException(string code, string reason, string remedy, Exception? inner = null) : Exception(reason, inner)
{
    public string Code { get; } = code;

    public string Reason { get; } = reason;

    public string Remedy { get; } = remedy;
}
