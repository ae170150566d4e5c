using System.Collections.Immutable;

namespace Ramwright.Metrology.Screens;

/// <summary>A moving average that forgets slowly, for small shifts and drifts. It flags; it deletes nothing.</summary>
/// <param name="Values">After each reading; the target stands before the first and is not among them.</param>
/// <param name="Target">Where it starts, in the readings' unit.</param>
/// <param name="Sigma">Standard deviation of one reading.</param>
/// <param name="Weight">λ, share of the newest reading.</param>
/// <remarks>S. W. Roberts, Technometrics 1 (1959) 239; NIST/SEMATECH e-Handbook 6.3.2.4.</remarks>
public sealed record Ewma(ImmutableArray<double> Values, double Target, double Sigma, double Weight)
{
    /// <param name="readings">In the order taken.</param>
    /// <param name="weight">λ, above 0 and at most 1; 0.2 to 0.3 is common practice.</param>
    /// <param name="target">In the readings' unit.</param>
    /// <param name="sigma">Standard deviation of one reading, above zero.</param>
    public static Ewma Of(ReadOnlySpan<double> readings, double weight, double target, double sigma)
    {
        if (weight is not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight above 0 and at most 1 is wanted.");
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sigma);
        var values = ImmutableArray.CreateBuilder<double>(readings.Length);
        var value = target;
        foreach (var x in readings)
            values.Add(value += weight * (x - value));
        return new(values.ToImmutable(), target, sigma, weight);
    }

    /// <summary>Limits far from the start, target ± k·σ·√(λ/(2 − λ)), in the readings' unit.</summary>
    public (double Lower, double Upper) Limits(double k = 3)
    {
        var half = k * Sigma * Math.Sqrt(Weight / (2 - Weight));
        return (Target - half, Target + half);
    }

    /// <summary>The value farthest from the target in its own standard deviations, and which one, from 0; near the start they are smaller.</summary>
    public (double Deviations, int Index) Farthest()
    {
        var (most, index) = (0.0, 0);
        for (var i = 0; i < Values.Length; i++)
        {
            var d = Math.Abs(Values[i] - Target) / (Sigma * Math.Sqrt(Weight / (2 - Weight) * (1 - Math.Pow(1 - Weight, 2 * (i + 1)))));
            if (d > most)
                (most, index) = (d, i);
        }

        return (most, index);
    }
}
