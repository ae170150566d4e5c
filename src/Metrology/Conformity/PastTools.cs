using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Conformity;

/// <summary>What a shop's past tools say about the next one.</summary>
public abstract record PastTools
{
    /// <summary>The fewest tools from which a spread is taken.</summary>
    public const int Fewest = 10;

    private PastTools() { }

    /// <summary>The spread of true values, with the measurement's own taken out.</summary>
    /// <param name="Prior">Mean and deviation.</param>
    /// <param name="Tools">How many it rests on.</param>
    public sealed record Known(Prior.Normal Prior, int Tools) : PastTools;

    /// <summary>Fewer than <see cref="Fewest"/> tools.</summary>
    public sealed record TooFew(int Tools) : PastTools;

    /// <summary>The readings scatter no more than measuring alone makes them: nothing is left to see.</summary>
    public sealed record Hidden(double StandardDeviation) : PastTools;

    /// <summary>Readings of past tools, one for each, as found; variance of true values = variance of readings − u².</summary>
    /// <param name="readings">In the limits' unit.</param>
    /// <param name="standardUncertainty">u of one such reading, above zero.</param>
    public static PastTools Of(ReadOnlySpan<double> readings, double standardUncertainty)
    {
        var u = Uncertain.Check(standardUncertainty);
        if (readings.Length < Fewest)
            return new TooFew(readings.Length);
        var moments = Moments.Of(readings);
        var variance = moments.StandardDeviation * moments.StandardDeviation - u * u;
        return variance > 0 ? new Known(new(moments.Mean, Math.Sqrt(variance)), readings.Length) : new Hidden(moments.StandardDeviation);
    }
}
