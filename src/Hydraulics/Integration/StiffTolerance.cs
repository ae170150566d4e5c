using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Integration;

/// <summary>The accuracy asked of each step.</summary>
/// <param name="Relative">As a share of the value, above 0 and below 1.</param>
/// <param name="Absolute">By state, in the state's unit, above 0.</param>
/// <param name="MostSteps">Limit on steps taken and refused, a number of steps.</param>
public sealed record StiffTolerance(double Relative, ImmutableArray<double> Absolute, int MostSteps = 100_000)
{
    /// <summary>The same absolute tolerance for every state.</summary>
    public static StiffTolerance Same(double relative, double absolute, int size, int mostSteps = 100_000) =>
        new(relative, [.. Enumerable.Repeat(absolute, size)], mostSteps);

    /// <summary>A vector in units of the tolerance, root mean square; 1 is just accepted. Larger of the two ends scales the relative part.</summary>
    internal double Norm(ReadOnlySpan<double> from, ReadOnlySpan<double> to, ReadOnlySpan<double> vector)
    {
        var sum = 0.0;
        for (var i = 0; i < vector.Length; i++)
        {
            var scaled = vector[i] / (Absolute[i] + Relative * Math.Max(Math.Abs(from[i]), Math.Abs(to[i])));
            sum += scaled * scaled;
        }

        return Math.Sqrt(sum / vector.Length);
    }
}
