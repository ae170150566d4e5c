namespace Ramwright.Instruments.Runs;

/// <summary>
/// One supposition of what the pressure did around its peak: up to a knee, steeper up to a corner, then down as a relief lets it; the rise may bend.
/// Knee, corner and the relief's opening time are supposed; level, both rises, bend, fall and the sensor's state at the beginning follow by least squares.
/// </summary>
/// <remarks>
/// Seen through τ·dy/dt = p − y. The answer to 1 is 1, to a ramp from c on R(t − c) with R(u) = u − τ·(1 − e^{−u/τ}), and whatever went before leaves
/// C·e^{−(t−a)/τ} (to u² it is u² − 2τu + 2τ²): with C free, no reading is differentiated and the past does not matter. A relief with opening time θ lets the pressure fall by
/// f·(u − θ·(1 − e^{−u/θ})), which the sensor shows as two lags one behind the other.
/// </remarks>
/// <param name="Knee">Seconds; the first sample where there is none.</param>
/// <param name="Corner">Seconds.</param>
/// <param name="OpeningSeconds">Time constant θ with which the relief opens, zero or more.</param>
internal readonly record struct CornerModel(double Knee, double Corner, double OpeningSeconds)
{
    private const int Count = 6, Transient = 0, Before = 1, Fall = 2, Bend = 3, Rise = 4, Peak = 5;

    /// <summary>How fast a rise bends, as a share of the steepest one in a second: a pump of 40 strokes a second that delivers as a sine has 2π·40. Our choice.</summary>
    private const double BendPerSecond = 250;

    /// <summary>What is thought of the six before the readings speak: bar, and bar per second.</summary>
    internal readonly record struct Belief(double SteepestBarPerSecond, double Lag, double Noise);

    /// <summary>The fit, with the weight of the evidence for this supposition.</summary>
    /// <param name="Bar">Peak above the reference level.</param>
    /// <param name="Variance">Of the peak, bar², from noise.</param>
    /// <param name="LogEvidence">Natural logarithm, up to a constant that all suppositions share.</param>
    /// <param name="Squares">Residuals over the noise, squared and added.</param>
    internal readonly record struct Told(double Bar, double Variance, double RiseBarPerSecond, double LogEvidence, double Squares);

    /// <summary>Fits the samples, less a reference level in bar.</summary>
    public Told? Fit(ReadOnlySpan<PressureSample> samples, double level, Belief belief)
    {
        Span<double> normal = stackalloc double[Count * Count];
        Span<double> right = stackalloc double[Count];
        Span<double> row = stackalloc double[Count];
        normal.Clear();
        right.Clear();
        var squares = 0.0;
        foreach (var sample in samples)
        {
            Row(sample.Seconds, samples[0].Seconds, belief.Lag, row);
            squares += Add(normal, right, row, sample.Bar - level, 1 / belief.Noise);
        }

        var steep = belief.SteepestBarPerSecond;
        squares += Prior(normal, right, Transient, 0, belief.Noise + (3 * steep * belief.Lag)) + Prior(normal, right, Before, 0.5 * steep, steep)
            + Prior(normal, right, Fall, 0, 2e5) + Prior(normal, right, Bend, 0, BendPerSecond * steep) + Prior(normal, right, Rise, steep, steep) + Prior(normal, right, Peak, 0, 200);
        return Solve(normal, right, squares);
    }

    private void Row(double t, double from, double lag, Span<double> row)
    {
        var (sinceKnee, sinceCorner) = (t - Knee, t - Corner);
        row[Transient] = lag > 0 ? Math.Exp(-(t - from) / lag) : 0;
        row[Before] = sinceKnee - lag - Ramp(sinceKnee, lag);
        row[Fall] = -Opened(sinceCorner, lag);
        row[Bend] = sinceCorner < 0 ? (-0.5 * sinceCorner * sinceCorner) + (lag * sinceCorner) - (lag * lag) : lag > 0 ? -lag * lag * Math.Exp(-sinceCorner / lag) : 0;
        row[Rise] = Knee - Corner + Ramp(sinceKnee, lag) - Ramp(sinceCorner, lag);
        row[Peak] = 1;
    }

    /// <summary>What the sensor shows of a ramp of 1 per second that began so many seconds ago.</summary>
    private static double Ramp(double u, double lag) => u <= 0 ? 0 : lag > 0 ? u - (lag * (1 - Math.Exp(-u / lag))) : u;

    private double Opened(double u, double lag)
    {
        if (u <= 0)
            return 0;
        var opening = OpeningSeconds;
        if (opening <= 0 || lag <= 0)
            return Ramp(u, lag + opening);
        if (Math.Abs(opening - lag) < 1e-3 * lag)
            opening *= 1.002; // equal lags have a formula of their own; this one is as near as the readings can tell
        return u - lag - opening + (((lag * lag * Math.Exp(-u / lag)) - (opening * opening * Math.Exp(-u / opening))) / (lag - opening));
    }

    private static double Prior(Span<double> normal, Span<double> right, int which, double mean, double deviation)
    {
        Span<double> row = stackalloc double[Count];
        row.Clear();
        row[which] = 1;
        return Add(normal, right, row, mean, 1 / deviation);
    }

    private static double Add(Span<double> normal, Span<double> right, ReadOnlySpan<double> row, double value, double perDeviation)
    {
        var weight = perDeviation * perDeviation;
        for (var i = 0; i < Count; i++)
        {
            right[i] += weight * row[i] * value;
            for (var j = 0; j <= i; j++)
                normal[(i * Count) + j] += weight * row[i] * row[j];
        }

        return weight * value * value;
    }

    /// <summary>By Cholesky factors; the peak stands last, so that its variance is the last of the diagonal.</summary>
    private static Told? Solve(Span<double> normal, Span<double> right, double squares)
    {
        var logDeterminant = 0.0;
        for (var i = 0; i < Count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = normal[(i * Count) + j];
                for (var k = 0; k < j; k++)
                    sum -= normal[(i * Count) + k] * normal[(j * Count) + k];
                if (j < i)
                {
                    normal[(i * Count) + j] = sum / normal[(j * Count) + j];
                    continue;
                }

                if (!(sum > 0))
                    return null;
                normal[(i * Count) + i] = Math.Sqrt(sum);
                logDeterminant += Math.Log(sum);
            }

            for (var k = 0; k < i; k++)
                right[i] -= normal[(i * Count) + k] * right[k];
            right[i] /= normal[(i * Count) + i];
            squares -= right[i] * right[i];
        }

        var peak = right[Peak] / normal[(Peak * Count) + Peak];
        var rise = (right[Rise] - (normal[(Peak * Count) + Rise] * peak)) / normal[(Rise * Count) + Rise];
        return double.IsFinite(peak) ? new(peak, 1 / (normal[(Peak * Count) + Peak] * normal[(Peak * Count) + Peak]), rise, -0.5 * (squares + logDeterminant), Math.Max(0, squares)) : null;
    }
}
