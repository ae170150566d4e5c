using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.PeakLists;

/// <summary>Which end of a peak list is the latest run.</summary>
public enum ListOrder { NewestFirst, OldestFirst }

/// <summary>The last peaks that a tool keeps in its memory, as read out once.</summary>
/// <param name="Name">What an answer calls it: a file's name, or a number.</param>
/// <param name="Peaks">At least one, in the order in which the tool shows them.</param>
public sealed record PeakList(string Name, ImmutableArray<Pressure> Peaks)
{
    public ImmutableArray<Pressure> Peaks { get; } = Peaks is { IsDefault: false, Length: > 0 }
        ? Peaks
        : throw new ArgumentException("A peak list holds at least one peak.", nameof(Peaks));
}

/// <summary>Lists to be joined, in the order in which they were read out, and what is known beside them.</summary>
public sealed record SpliceQuestion
{
    public required ImmutableArray<PeakList> Lists { get; init; }

    /// <summary>Null when nobody said it: then both are tried, and the answer is a series only when one of them alone fits.</summary>
    public ListOrder? Order { get; init; }

    /// <summary>How many peaks the tool keeps, where it is known. Every list then is the whole memory: shorter only while the memory was not yet full.</summary>
    public int? Depth { get; init; }

    /// <summary>New runs from each list to the next, zero or more, null where nobody counted; empty, or one less than there are lists.</summary>
    public ImmutableArray<int?> NewRuns { get; init; } = [];

    /// <summary>Readings that each list shares with those before it, where the new runs are not stated; one or more.</summary>
    public int LeastShared { get; init; } = 1;
}
