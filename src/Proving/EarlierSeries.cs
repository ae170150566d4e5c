using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ramwright.Metrology.Moderation;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving;

/// <summary>The scatter of one earlier series of the model.</summary>
/// <param name="StandardDeviation">Of its peaks (n − 1), above zero.</param>
/// <param name="Runs">2 to 100,000.</param>
public sealed record EarlierScatter(Pressure StandardDeviation, int Runs);

/// <summary>Earlier series of a model, and what they say about the scatter of its next tool.</summary>
public sealed class EarlierSeries
{
    /// <summary>Fewer say too little about how alike the tools are.</summary>
    public const int Fewest = ScatterPopulation.FewestSeries;

    /// <summary>A moderated series has at most so many runs; by then a tool's own scatter says all.</summary>
    public const int MostRuns = NextSeries.MostRuns;

    private readonly ConcurrentDictionary<int, NextSeries> _next = new(); // at most MostRuns of them

    /// <param name="series">One series per tool, all that the shop has of the model: leaving out the restless ones spoils the claim. At least <see cref="Fewest"/>.</param>
    /// <exception cref="ArgumentException">A bug in the caller: too few series, a scatter of zero, a series of one run.</exception>
    public EarlierSeries(IEnumerable<EarlierScatter> series)
    {
        Series = [.. series];
        Population = new([.. Series.Select(s => new SeriesScatter(s.StandardDeviation.Pascals, s.Runs - 1))]);
    }

    public ImmutableArray<EarlierScatter> Series { get; }

    internal ScatterPopulation Population { get; }

    internal NextSeries Next(int runs) => _next.GetOrAdd(runs, static (n, population) => new(population, n), Population);
}
