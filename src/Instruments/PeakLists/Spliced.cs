using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.PeakLists;

/// <summary>The series that overlapping peak lists make up, or why they make up none that is certain. Lists count from 0 here.</summary>
public abstract record Spliced
{
    private Spliced() { }

    /// <summary>Exactly one series fits.</summary>
    /// <param name="Series">Every run, oldest first.</param>
    /// <param name="Places">Where each list lies in it.</param>
    public sealed record Whole(ImmutableArray<Pressure> Series, ImmutableArray<ListPlace> Places, ListOrder Order) : Spliced;

    /// <summary>More than one series fits.</summary>
    /// <param name="List">The first list that could stand in more than one place behind the one before it.</param>
    /// <param name="PossibleNewRuns">How many runs could be new in it, rising; two or more.</param>
    /// <param name="Lengths">How many runs the whole series could then have, rising.</param>
    public sealed record Ambiguous(int List, ImmutableArray<int> PossibleNewRuns, ImmutableArray<int> Lengths) : Spliced;

    /// <summary>The lists fit whichever end is taken as the latest, and give two series.</summary>
    public sealed record OrderOpen : Spliced;

    /// <summary>A list differs from what was there before, in few readings: one of the two was written down wrongly, or the memory was cleared.</summary>
    /// <param name="NewRuns">How many runs would be new where it fits best.</param>
    /// <param name="Agreeing">Shared readings that agree there.</param>
    public sealed record Contradicts(int List, int NewRuns, int Agreeing, ImmutableArray<Difference> Differing) : Spliced;

    /// <summary>A list shares too little with those before it: how many runs lie between is not known.</summary>
    public sealed record Apart(int List) : Spliced;

    /// <summary>More new runs were stated than the list holds: these are in no list.</summary>
    public sealed record Gap(int List, int MissingRuns) : Spliced;

    /// <summary>A list is longer than the memory, or shorter than the one before it.</summary>
    public sealed record NotWholeMemory(int List, int Readings, int Depth) : Spliced;

    /// <summary>Too many series fit to follow them all.</summary>
    public sealed record TooManyWays(int List) : Spliced;
}

/// <summary>Where a list lies in a series; runs count from 1.</summary>
/// <param name="NewRuns">Runs that no list before it held; all of them in the first.</param>
/// <param name="Shared">Runs that lists before it held already.</param>
public readonly record struct ListPlace(string Name, int FirstRun, int LastRun, int NewRuns, int Shared);

/// <summary>A reading that is not what an earlier list said.</summary>
/// <param name="Position">1-based, in the list as the tool shows it.</param>
public readonly record struct Difference(int Position, Pressure Before, Pressure Now);
