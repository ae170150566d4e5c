using Ramwright.Records.Ids;

namespace Ramwright.Records.Events;

/// <summary>Something that happened to a job. Written once, never changed; who, when and under which number stands in its <see cref="Entry{T}"/>.</summary>
public abstract record JobEvent;

/// <summary>Something that happened to the house's registers and settings.</summary>
public abstract record HouseEvent;

/// <summary>An event as it stands in the ledger.</summary>
/// <param name="Number">The ledger number.</param>
/// <param name="At">When the ledger took it, UTC.</param>
/// <param name="By">Who signed it.</param>
public sealed record Entry<T>(EntryNumber Number, DateTimeOffset At, PersonId By, T What)
{
    /// <summary>The same entry, its event known more exactly.</summary>
    public Entry<TOther> With<TOther>(TOther what) => new(Number, At, By, what);
}

/// <summary>The nine stations that every job passes, in order.</summary>
public enum Station { Arrive, Find, Plan, Price, Strip, Rebuild, Set, Prove, Release }

/// <summary>The five ends of a job.</summary>
public enum JobEnd { Released, ReturnedUnrepaired, Retired, NotProven, SentOut }
