using System.Collections.Immutable;

namespace Ramwright.Parts.Covering;

/// <summary>Units of one row that one piece of a column gives; one or more.</summary>
public readonly record struct Gives(int Row, int Count);

/// <summary>Something that can be bought any number of times: its cost (zero or more, in whole units) and what one piece gives.</summary>
public sealed record CoverColumn(long Cost, ImmutableArray<Gives> Contents);

/// <summary>Find whole numbers of columns of least total cost that together give each row what it needs.</summary>
/// <remarks>The covering problem with whole multiples; with needs of one and contents of one it is weighted set covering.</remarks>
public sealed class CoverProblem
{
    /// <param name="need">Units wanted of each row, one or more.</param>
    /// <exception cref="ArgumentException">A caller's bug: a need or content below one, a cost below zero, a row that no column gives, or costs too large to add exactly.</exception>
    public CoverProblem(ImmutableArray<int> need, ImmutableArray<CoverColumn> columns)
    {
        var given = new bool[need.Length];
        foreach (var item in columns.SelectMany(c => c.Contents))
            given[item.Row] = true;
        if (need.Any(n => n < 1) || columns.Any(c => c.Cost < 0 || c.Contents.Any(g => g.Count < 1)) || given.Contains(false))
            throw new ArgumentException("Needs and contents are one or more, costs zero or more, and each row is given by some column.", nameof(columns));
        if (columns.Length > 0 && need.Sum(n => (double)n) * columns.Max(c => (double)c.Cost) > LargestExact)
            throw new ArgumentException("The costs are too large to add exactly.", nameof(columns));
        Need = need;
        Columns = columns;
        ByRow = [.. Enumerable.Range(0, need.Length).Select(_ => ImmutableArray<int>.Empty)];
        var byRow = need.Select(_ => ImmutableArray.CreateBuilder<int>()).ToArray();
        for (var c = 0; c < columns.Length; c++)
        {
            foreach (var item in columns[c].Contents)
                byRow[item.Row].Add(c);
        }
        ByRow = [.. byRow.Select(b => b.ToImmutable())];
    }

    /// <summary>Whole numbers up to here are exact in the bounds' floating point.</summary>
    public static double LargestExact => 1L << 50;

    public ImmutableArray<int> Need { get; }

    public ImmutableArray<CoverColumn> Columns { get; }

    /// <summary>The columns that give each row.</summary>
    public ImmutableArray<ImmutableArray<int>> ByRow { get; }
}

/// <summary>The best cover found.</summary>
/// <param name="Take">Pieces of each column.</param>
/// <param name="LowerBound">No cover costs less.</param>
/// <param name="Nodes">Search nodes looked at.</param>
public sealed record CoverSolution(ImmutableArray<int> Take, long Cost, long LowerBound, int Nodes)
{
    public bool ProvenOptimal => LowerBound >= Cost;
}
