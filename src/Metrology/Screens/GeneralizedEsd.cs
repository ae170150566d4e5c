using System.Collections.Immutable;

namespace Ramwright.Metrology.Screens;

/// <summary>One step of the search for several outliers.</summary>
/// <param name="Index">Which reading lies farthest from the mean of those left, from 0.</param>
/// <param name="Statistic">Its distance in standard deviations of those left.</param>
/// <param name="PValue">Chance of a distance as large in either direction with no outlier among those left; an upper bound, 0 to 1.</param>
public readonly record struct EsdStep(int Index, double Statistic, double PValue);

/// <summary>The generalized extreme Studentized deviate test: up to so many outliers, also where one hides another. It flags; it deletes nothing.</summary>
/// <remarks>B. Rosner, Technometrics 25 (1983) 165; NIST/SEMATECH e-Handbook 1.3.5.17.3. Its critical values are Grubbs' for the readings left.</remarks>
public static class GeneralizedEsd
{
    /// <summary>Takes the farthest reading away, again and again; fewer steps when those left are equal or fewer than three.</summary>
    /// <param name="readings">Any number.</param>
    /// <param name="most">Steps at most, 1 or more.</param>
    public static ImmutableArray<EsdStep> Steps(ReadOnlySpan<double> readings, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        var left = readings.ToArray().ToList();
        var places = Enumerable.Range(0, readings.Length).ToList();
        var steps = ImmutableArray.CreateBuilder<EsdStep>();
        while (steps.Count < most && Grubbs.Test([.. left]) is { } farthest)
        {
            steps.Add(new(places[farthest.Index], farthest.Statistic, farthest.PValue));
            left.RemoveAt(farthest.Index);
            places.RemoveAt(farthest.Index);
        }

        return steps.ToImmutable();
    }

    /// <summary>The outliers: all up to the last step that passes its critical value, even when an earlier one does not.</summary>
    /// <param name="steps">From <see cref="Steps"/>.</param>
    /// <param name="alpha">Above 0 and below 1.</param>
    public static ImmutableArray<int> Outliers(ImmutableArray<EsdStep> steps, double alpha)
    {
        var count = 0;
        for (var i = 0; i < steps.Length; i++)
            if (steps[i].PValue < alpha)
                count = i + 1;
        return [.. steps.Take(count).Select(s => s.Index)];
    }
}
