namespace Ramwright.Instruments.Runs;

/// <summary>A relief that snaps open makes a corner: the pressure rises steadily, then falls steeply. Both are fitted as the lagging sensor shows them.</summary>
/// <remarks>
/// With u = t − t₀ from the corner, rise s, fall f, peak P and time constant τ, the solution of τ·dy/dt = p − y behind a long steady rise is
/// y = P + s·(u − τ) before the corner, and y = P − f·(u − τ·(1 − e^{−u/τ})) − s·τ·e^{−u/τ} behind it. P, s and f are linear; t₀ is searched.
/// How far back the rise is steady is found too: the longest stretch on which the residuals are no larger than the noise, for a pump that pulses
/// leaves only the last pulse.
/// </remarks>
internal static class CornerFit
{
    private const int ForwardMost = 64;

    /// <summary>With fewer degrees of freedom a stretch that reaches back past the last pulse may fit by chance: then the residuals must be no larger than the noise.</summary>
    private const int Many = 20;

    /// <summary>A fit that leaves the peak open by more than so many times the noise of one reading tells less than the reading.</summary>
    private const double MostOpen = 5;
    private static readonly int[] s_backward = [64, 48, 32, 24, 20, 16, 12, 10, 8, 6, 5, 4, 3];

    /// <param name="first">First sample that may be the top but for noise; <paramref name="last"/> the last one.</param>
    /// <returns>Null where the fall was over between two samples, or no corner fits.</returns>
    public static Fitted? Of(ReadOnlySpan<PressureSample> run, int top, int first, int last, double lag, double noise)
    {
        var forward = Forward(run, top);
        if (forward < 2 || first == 0 || last + 1 >= run.Length)
            return null;
        return Longest(run, top, first, last, forward, lag, noise, dof => dof < Many ? 1 : 1 + (2 * Math.Sqrt(2.0 / dof))) ?? Longest(run, top, first, last, forward, lag, noise, dof => 1 + (4 * Math.Sqrt(2.0 / dof)));
    }

    /// <summary>The fit over the longest stretch whose residuals, squared and over those of the noise, stay below a limit for their degrees of freedom.</summary>
    private static Fitted? Longest(ReadOnlySpan<PressureSample> run, int top, int first, int last, int forward, double lag, double noise, Func<int, double> limit)
    {
        foreach (var backward in s_backward)
        {
            if (backward > top + 1)
                continue;
            var stretch = run[(top + 1 - backward)..(top + 1 + forward)];
            var freedom = Math.Max(1, stretch.Length - 4);
            if (Search(stretch, run[first - 1].Seconds, run[last + 1].Seconds, lag) is not { } corner)
                continue;
            var perNoise = corner.Fit.Squares / (freedom * noise * noise);
            if ((perNoise <= limit(freedom) || (backward == s_backward[^1] && perNoise <= 16)) && Told(stretch, corner, lag, noise, perNoise) is { } told && told.StandardBar <= MostOpen * noise)
                return told;
        }
        return null;
    }

    /// <summary>Samples behind the top down to 95 % of it, at least two; none where it fell too fast to be followed.</summary>
    private static int Forward(ReadOnlySpan<PressureSample> run, int top)
    {
        for (var n = 2; n <= ForwardMost && top + n < run.Length; n++)
        {
            if (run[top + n].Bar < 0.4 * run[top].Bar)
                return 0;
            if (run[top + n].Bar < 0.95 * run[top].Bar)
                return n;
        }
        return 0;
    }

    /// <summary>The corner's time with the least squares: a coarse scan, then golden sections.</summary>
    private static Corner? Search(ReadOnlySpan<PressureSample> stretch, double from, double to, double lag)
    {
        const int Steps = 48;
        Corner? best = null;
        for (var i = 0; i <= Steps; i++)
        {
            if (At(stretch, from + ((to - from) * i / Steps), lag) is { } corner && (best is not { } b || corner.Fit.Squares < b.Fit.Squares))
                best = corner;
        }
        if (best is not { } coarse)
            return null;
        const double Golden = 0.61803398874989485;
        var (low, high) = (coarse.Seconds - ((to - from) / Steps), coarse.Seconds + ((to - from) / Steps));
        for (var i = 0; i < 24; i++)
        {
            var (a, b) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
            if ((At(stretch, a, lag)?.Fit.Squares ?? double.PositiveInfinity) <= (At(stretch, b, lag)?.Fit.Squares ?? double.PositiveInfinity))
                high = b;
            else
                low = a;
        }
        return At(stretch, 0.5 * (low + high), lag) is { } fine && fine.Fit.Squares <= coarse.Fit.Squares ? fine : coarse;
    }

    private static Corner? At(ReadOnlySpan<PressureSample> stretch, double corner, double lag)
    {
        Span<Terms> terms = stackalloc Terms[stretch.Length];
        Span<double> values = stackalloc double[stretch.Length];
        Span<double> weights = stackalloc double[stretch.Length];
        weights.Fill(1);
        for (var i = 0; i < stretch.Length; i++)
        {
            var u = stretch[i].Seconds - corner;
            var decay = u <= 0 ? 1 : lag > 0 ? Math.Exp(-u / lag) : 0;
            terms[i] = u < 0 ? new(1, u - lag, 0) : new(1, -lag * decay, -(u - (lag * (1 - decay))));
            values[i] = stretch[i].Bar;
        }
        return LeastSquares.Solve(terms, values, weights) is { } fit ? new(corner, fit) : null;
    }

    private static Fitted? Told(ReadOnlySpan<PressureSample> stretch, Corner corner, double lag, double noise, double perNoise)
    {
        var (peak, rise, fall) = (corner.Fit.Coefficients.A, corner.Fit.Coefficients.B, corner.Fit.Coefficients.C);
        if (rise <= 0 || fall <= 0)
            return null;
        var variance = noise * noise * Math.Max(1, perNoise);
        return new(peak, Math.Sqrt((variance * corner.Fit.Variance(new(1, 0, 0))) + TimeVariance(stretch, corner, lag, variance)), rise, PeakMethod.Corner);
    }

    /// <summary>What the corner's own time leaves open, bar²: its variance from the curvature of the squares, 2σ²/S″, times the slope of the peak along it.</summary>
    private static double TimeVariance(ReadOnlySpan<PressureSample> stretch, Corner corner, double lag, double variance)
    {
        var h = 0.05 * (stretch[^1].Seconds - stretch[0].Seconds) / stretch.Length;
        if (At(stretch, corner.Seconds - h, lag) is not { } before || At(stretch, corner.Seconds + h, lag) is not { } behind)
            return 0;
        var curvature = (before.Fit.Squares - (2 * corner.Fit.Squares) + behind.Fit.Squares) / (h * h);
        var slope = (behind.Fit.Coefficients.A - before.Fit.Coefficients.A) / (2 * h);
        return curvature > 0 ? slope * slope * 2 * variance / curvature : 0;
    }

    private readonly record struct Corner(double Seconds, Fit Fit);
}
