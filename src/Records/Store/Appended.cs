using System.Collections.Immutable;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Store;

/// <summary>What became of a submission. Nothing is ever written by half.</summary>
public abstract record Appended
{
    private Appended() { }

    /// <summary>It stands in the ledger and survives a crash.</summary>
    /// <param name="Job">The job it belongs to, newly numbered when it was opened by this; null for house events.</param>
    /// <param name="Numbers">The ledger numbers, in the order of the events.</param>
    /// <param name="Head">The head after the last of them.</param>
    /// <param name="Repeated">True when the same token had been written before: this is the first result.</param>
    public sealed record Written(JobId? Job, ImmutableArray<EntryNumber> Numbers, LedgerHead Head, bool Repeated) : Appended;

    /// <summary>Others wrote to the job since the version that the writer saw; nothing was added.</summary>
    public sealed record Conflict(ImmutableArray<Entry<JobEvent>> Since) : Appended;

    /// <summary>The event cannot follow on what stands; nothing was added. The code has a page, the text is for the person.</summary>
    public sealed record Refused(string Code, string What, string Mend) : Appended;
}
