using Ramwright.Records.Ids;

namespace Ramwright.Records.Store;

/// <summary>What checking the chain found.</summary>
public abstract record Verification
{
    private Verification() { }

    /// <summary>Every entry is as it was written, none is missing, and the head asked for (if any) is among them.</summary>
    /// <param name="Asked">The entry that the head asked for belongs to; null when none was asked.</param>
    public sealed record Genuine(LedgerHead Head, EntryNumber? Asked) : Verification;

    /// <summary>Something was changed, taken out or put in.</summary>
    /// <param name="First">The first number at which the chain is not what it was.</param>
    /// <param name="What">What is wrong there, in words.</param>
    public sealed record Altered(EntryNumber First, string What) : Verification;

    /// <summary>The chain is sound as far as it goes, but entries at its end are gone: a witness knows a later head.</summary>
    public sealed record TailCut(LedgerHead Head, LedgerHead Witnessed) : Verification;

    /// <summary>The chain is sound, but the head asked for is none of its heads: the paper is of another ledger, or the tail was cut.</summary>
    public sealed record UnknownHead(LedgerHead Head, string Asked) : Verification;
}
