using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>One reason why an input may be off.</summary>
public sealed record Component
{
    /// <param name="name">What it is, such as <c>calibration</c>.</param>
    /// <param name="spread">How the true value may lie.</param>
    /// <param name="effect">Same in every run, or new in each.</param>
    /// <param name="degreesOfFreedom">How well the spread is known: 0.5 or more; infinite when it is taken as known.</param>
    public Component(string name, Spread spread, Effect effect, double degreesOfFreedom = double.PositiveInfinity)
    {
        if (!(degreesOfFreedom >= LeastDegreesOfFreedom))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Degrees of freedom are 0.5 or more.");
        (Name, Spread, Effect, DegreesOfFreedom) = (name, spread, effect, degreesOfFreedom);
    }

    /// <summary>The fewest degrees of freedom that are taken.</summary>
    public const double LeastDegreesOfFreedom = 0.5;

    public string Name { get; }

    public Spread Spread { get; }

    public Effect Effect { get; }

    /// <summary>Degrees of freedom, infinite when the spread is taken as known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The mean of repeated readings: s/√n with n − 1 degrees of freedom (JCGM 100:2008, 4.2; clause from memory).</summary>
    /// <param name="name">What it is, such as <c>repeated readings</c>.</param>
    /// <param name="readings">Two or more, in the input's unit.</param>
    public static Component OfReadings(string name, ReadOnlySpan<double> readings)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(readings.Length, 2, nameof(readings));
        var moments = Moments.Of(readings);
        return new(name, new Spread.Normal(moments.StandardDeviation / Math.Sqrt(readings.Length)), Effect.Random, readings.Length - 1);
    }
}
