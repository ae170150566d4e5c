using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Moderation;

/// <summary>Logarithm of the likelihood of t = ln s₀² for one ν₀, over independent s² that are s₀²·F(ν, ν₀).</summary>
internal sealed class ScaleLikelihood
{
    private readonly SeriesScatter[] _series;
    private readonly double[] _logs; // ln(ν·s²/ν₀)
    private readonly double _front;

    public ScaleLikelihood(SeriesScatter[] series, double alikeDegrees)
    {
        _series = series;
        AlikeDegrees = alikeDegrees;
        _logs = new double[series.Length];
        for (var i = 0; i < series.Length; i++)
        {
            double half = 0.5 * series[i].DegreesOfFreedom, other = 0.5 * alikeDegrees;
            _logs[i] = 2 * Math.Log(series[i].Deviation) + Math.Log(half / other);
            _front += other > half ? GammaFunction.LogRise(other, half) - GammaFunction.Log(half) : GammaFunction.LogRise(half, other) - GammaFunction.Log(other);
        }
    }

    /// <summary>ν₀.</summary>
    public double AlikeDegrees { get; }

    /// <summary>The logarithm itself.</summary>
    public double At(double t)
    {
        var sum = _front; // −ln B(ν/2, ν₀/2)
        for (var i = 0; i < _logs.Length; i++)
        {
            var y = _logs[i] - t;
            var growth = y > 0 ? y + Math.Log(1 + Math.Exp(-y)) : Math.Log(1 + Math.Exp(y)); // ln(1 + e^y)
            sum += 0.5 * (_series[i].DegreesOfFreedom * y - (_series[i].DegreesOfFreedom + AlikeDegrees) * growth);
        }

        return sum;
    }

    /// <summary>The t, a logarithm, where the likelihood is largest: Newton's method from <paramref name="start"/>, no step longer than 1; the slope falls all the way.</summary>
    public double Mode(double start)
    {
        var t = start;
        for (var step = 0; step < 200; step++)
        {
            var (slope, bend) = Slope(t);
            var move = Math.Clamp(slope / bend, -1, 1);
            t += move;
            if (Math.Abs(move) < 1e-5)
                break;
        }

        return t;
    }

    /// <summary>How wide the likelihood is at <paramref name="t"/>, as a standard deviation of this logarithm.</summary>
    public double Width(double t) => 1 / Math.Sqrt(Slope(t).Bend);

    private (double Slope, double Bend) Slope(double t)
    {
        double slope = 0, bend = 0;
        for (var i = 0; i < _logs.Length; i++)
        {
            var share = 1 / (1 + Math.Exp(t - _logs[i]));
            var half = 0.5 * (_series[i].DegreesOfFreedom + AlikeDegrees);
            slope += half * share - 0.5 * _series[i].DegreesOfFreedom;
            bend += half * share * (1 - share);
        }

        return (slope, bend);
    }
}
