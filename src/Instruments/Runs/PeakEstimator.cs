using System.Diagnostics;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Runs;

/// <summary>The true peak behind the readings of a run: the sensor's lag undone, and no gain from noise.</summary>
/// <remarks>
/// A first-order sensor reads y with τ·dy/dt = p − y, so on a rise it stays behind by τ·dy/dt: p = y + τ·dy/dt. And the highest of n noisy
/// readings of one pressure lies above it, by 1.54 standard deviations of the noise for n = 10, by 2.51 for n = 100. So the peak is never taken
/// from one reading but from a fit; where no fit holds, the highest reading stands and the answer says so.
/// </remarks>
public static class PeakEstimator
{
    private const int FlatLeast = 8;

    /// <summary>A top that lasts so many time constants is shown as it is, e^−6 of the change before it left.</summary>
    private const double SettledLags = 6;
    private const int RiseMost = 24;
    private const int RiseLeast = 6;

    /// <summary>Noise below this is not believed, bar: readings come in steps.</summary>
    private const double LeastNoiseBar = 0.05;

    /// <param name="run">The samples of one run, at least one, in the order of time.</param>
    /// <param name="lag">Time constant of the sensor's first-order lag, zero or more.</param>
    /// <param name="resolution">Step of the readings, zero or more.</param>
    public static PeakEstimate Estimate(ReadOnlySpan<PressureSample> run, TimeSpan lag, Pressure resolution)
    {
        if (run.IsEmpty)
            throw new ArgumentException("A run has at least one sample.", nameof(run));
        ArgumentOutOfRangeException.ThrowIfLessThan(lag, TimeSpan.Zero);
        var top = Top(run);
        var noise = Math.Max(Noise(run, top), Math.Max(LeastNoiseBar, resolution.Bar / Math.Sqrt(12)));
        var (first, last) = TopRegion(run, top, 6 * noise);
        var settled = last - first + 1 >= FlatLeast && run[last].Seconds - run[first].Seconds >= SettledLags * lag.TotalSeconds;
        var fitted = CornerFit.Of(run, top, first, last, lag.TotalSeconds, noise)
            ?? (settled ? Level(run[first..(last + 1)], noise) ?? FlatTop(run[first..(last + 1)], lag.TotalSeconds, noise) : null)
            ?? (CornerFit.FellAtOnce(run, top) ? Rise(run[..(top + 1)], lag.TotalSeconds, noise) : null);
        var highest = Pressure.FromBar(run[top].Bar);
        return fitted is { } f && Math.Abs(f.Bar - run[top].Bar) <= 0.1 * Math.Abs(run[top].Bar)
            ? new(Pressure.FromBar(f.Bar), highest, f.Method, Pressure.FromBar(f.StandardBar), f.RiseBarPerSecond)
            : new(highest, highest, PeakMethod.HighestReading, null, fitted?.RiseBarPerSecond ?? RoughRise(run, top));
    }

    /// <summary>Standard deviation of the noise, bar, from second differences of the samples before the top, which a smooth pressure leaves near zero.</summary>
    /// <remarks>The variance of y₋₁ − 2y₀ + y₊₁ is 6σ²; the median of its size is 0.6745·√6·σ for normal noise.</remarks>
    internal static double Noise(ReadOnlySpan<PressureSample> run, int top)
    {
        const int Most = 200;
        const int Least = 12;
        var from = Math.Max(1, top - Most);
        var sizes = new List<double>(Most);
        for (var i = from; i < top; i++)
            sizes.Add(Math.Abs(run[i - 1].Bar - (2 * run[i].Bar) + run[i + 1].Bar));
        if (sizes.Count < Least)
            return 0;
        sizes.Sort();
        return sizes[sizes.Count / 2] / (0.6745 * Math.Sqrt(6));
    }

    /// <summary>The mean of a top that is level but for noise.</summary>
    private static Fitted? Level(ReadOnlySpan<PressureSample> top, double noise)
    {
        if (top.Length < FlatLeast)
            return null;
        var (mean, squares) = (0.0, 0.0);
        foreach (var sample in top)
            mean += sample.Bar / top.Length;
        foreach (var sample in top)
            squares += (sample.Bar - mean) * (sample.Bar - mean);
        return squares / (top.Length - 1) <= noise * noise * (1 + (2 * Math.Sqrt(2.0 / (top.Length - 1))))
            ? new(mean, WithHidden(noise / Math.Sqrt(top.Length), top.Length, noise), 0, PeakMethod.FlatTop)
            : null;
    }

    /// <summary>A quadratic through a slow top; its highest value, with the lag undone.</summary>
    private static Fitted? FlatTop(ReadOnlySpan<PressureSample> top, double lag, double noise)
    {
        Debug.Assert(top.Length >= FlatLeast);
        if (Quadratic(top, noise) is not { } fit || fit.Squares / (top.Length - 3) > 2 * noise * noise)
            return null;
        Fitted? best = null;
        foreach (var sample in top)
        {
            var found = At(fit, sample.Seconds - top[^1].Seconds, lag, noise, PeakMethod.FlatTop);
            if (best is not { } b || found.Bar > b.Bar)
                best = found;
        }
        return best is { } highest ? highest with { StandardBar = WithHidden(highest.StandardBar, top.Length, noise) } : null;
    }

    /// <summary>A slow change of the top is seen only where it stands out of the scatter of the residuals, a variance of noise²·√(2/n): so much may hide.</summary>
    private static double WithHidden(double standard, int count, double noise) => Math.Sqrt((standard * standard) + (noise * noise * Math.Sqrt(2.0 / (count - 1))));

    /// <summary>A quadratic through the last samples of a rise, the longest stretch that it fits; its value at the end, with the lag undone.</summary>
    private static Fitted? Rise(ReadOnlySpan<PressureSample> rise, double lag, double noise)
    {
        for (var n = Math.Min(RiseMost, rise.Length); n >= RiseLeast; n--)
        {
            var end = rise[^n..];
            if (Quadratic(end, noise) is { } fit && fit.Squares / (n - 3) <= 1.5 * noise * noise && fit.Coefficients.B > 0)
                return Between(At(fit, 0, lag, noise, PeakMethod.Rise), end[^1].Seconds - end[^2].Seconds);
        }
        return null;
    }

    /// <summary>The peak was at any moment up to the next sample, one as likely as the other: half an interval's rise more, and its spread.</summary>
    private static Fitted Between(Fitted atLast, double interval)
    {
        var rises = Math.Max(0, atLast.RiseBarPerSecond) * interval;
        return atLast with { Bar = atLast.Bar + (0.5 * rises), StandardBar = Math.Sqrt((atLast.StandardBar * atLast.StandardBar) + (rises * rises / 12)) };
    }

    private static Fit? Quadratic(ReadOnlySpan<PressureSample> samples, double noise)
    {
        var (terms, values) = (new Terms[samples.Length], new double[samples.Length]);
        for (var i = 0; i < samples.Length; i++)
        {
            var u = samples[i].Seconds - samples[^1].Seconds;
            (terms[i], values[i]) = (new(1, u, u * u), samples[i].Bar);
        }
        return LeastSquares.SolveRobust(terms, values, noise);
    }

    private static Fitted At(Fit fit, double u, double lag, double noise, PeakMethod method)
    {
        var terms = new Terms(1, u + lag, (u * u) + (2 * lag * u));
        return new(fit.Coefficients.Dot(terms), noise * Math.Sqrt(Math.Max(0, fit.Variance(terms))), fit.Coefficients.B + (2 * u * fit.Coefficients.C), method);
    }

    private static double RoughRise(ReadOnlySpan<PressureSample> run, int top) =>
        top > 0 && run[top].Seconds > run[top - 1].Seconds ? (run[top].Bar - run[top - 1].Bar) / (run[top].Seconds - run[top - 1].Seconds) : 0;

    private static int Top(ReadOnlySpan<PressureSample> run)
    {
        var top = 0;
        for (var i = 1; i < run.Length; i++)
        {
            if (run[i].Bar > run[top].Bar)
                top = i;
        }
        return top;
    }

    private static (int First, int Last) TopRegion(ReadOnlySpan<PressureSample> run, int top, double within)
    {
        var (first, last) = (top, top);
        while (first > 0 && run[first - 1].Bar >= run[top].Bar - within)
            first--;
        while (last + 1 < run.Length && run[last + 1].Bar >= run[top].Bar - within)
            last++;
        return (first, last);
    }
}

/// <summary>A fitted peak in bar, its standard uncertainty from noise, and the rise towards it.</summary>
internal readonly record struct Fitted(double Bar, double StandardBar, double RiseBarPerSecond, PeakMethod Method);
