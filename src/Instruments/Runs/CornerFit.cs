namespace Ramwright.Instruments.Runs;

/// <summary>
/// A relief that snaps open makes a corner: the pressure rises, then falls steeply. When the corner was, where the last stroke of the pump began and how
/// fast the relief opened is not known; so all of these are supposed at once, each weighs by how well the readings bear it out, and the peak's uncertainty
/// holds what they disagree about as well as the noise.
/// </summary>
/// <remarks>Bayesian model averaging over a grid; the linear parts in closed form (A. Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 14 and 22; chapters from memory).</remarks>
internal static class CornerFit
{
    private const int ForwardLeast = 2, ForwardMost = 128, BackwardLeast = 6, BackwardMost = 256, Corners = 24, Knees = 7, Rounds = 4;

    /// <summary>Suppositions this far below the best, in the logarithm of their weight, are given up.</summary>
    private const double GivenUp = 12;

    /// <summary>Residuals this many times what the noise explains are a pressure of another form.</summary>
    private const double MostMisfit = 4;

    /// <summary>Time constants of a relief that snaps open, seconds: at once, quickly, leisurely. Our choice; the made-up strokes have 1 ms.</summary>
    private static readonly double[] s_openings = [0, 0.4e-3, 1.2e-3];

    /// <param name="first">First sample that may be the top but for noise; <paramref name="last"/> the last one.</param>
    /// <returns>Null where the fall was over between two samples, no corner fits, or the fit tells less than the highest reading.</returns>
    public static Fitted? Of(ReadOnlySpan<PressureSample> run, int top, int first, int last, double lag, double noise)
    {
        var interval = (run[top].Seconds - run[0].Seconds) / Math.Max(1, top);
        var forward = Forward(run, last);
        if (forward < ForwardLeast || first == 0 || last + 1 >= run.Length || !(interval > 0))
            return null;
        var seen = lag < 0.02 * interval ? 0 : lag; // a lag that no reading shows
        foreach (var share in new[] { 1.0, 0.6, 0.35 })
        {
            var backward = Math.Clamp((int)(share * (6e-3 + (2 * seen)) / interval), BackwardLeast, BackwardMost);
            var begin = Math.Max(Math.Max(0, last - BackwardMost), Math.Min(last - backward, first - BackwardLeast));
            var stretch = run[begin..(last + 1 + forward)];
            var belief = new CornerModel.Belief(Steepest(run, top, Math.Max(4e-3, 4 * interval), noise), seen, noise);
            if (stretch.Length >= BackwardLeast + ForwardLeast && Averaged(stretch, run[top].Bar, run[Math.Max(first - 1, begin)].Seconds, run[last + 1].Seconds, belief) is { } told)
                return told.StandardBar <= Math.Max(3 * noise, 0.5 * belief.SteepestBarPerSecond * (lag + interval)) ? told : null;
        }

        return null;
    }

    /// <summary>Whether the fall was over before two samples had seen it.</summary>
    public static bool FellAtOnce(ReadOnlySpan<PressureSample> run, int top) => top + 1 < run.Length && run[Math.Min(top + 2, run.Length - 1)].Bar < 0.4 * run[top].Bar;

    /// <summary>Samples behind the last of the top down to 95 % of it, at least two; none where it fell too fast to be followed.</summary>
    private static int Forward(ReadOnlySpan<PressureSample> run, int top)
    {
        for (var n = 2; n <= ForwardMost && top + n < run.Length; n++)
        {
            if (run[top + n].Bar < 0.4 * run[top].Bar)
                return 0;
            if (run[top + n].Bar < 0.95 * run[top].Bar || n == ForwardMost)
                return n;
        }

        return 0;
    }

    /// <summary>The steepest rise over so many seconds in the last tenth of a second, bar per second, less what noise adds to a steepest one.</summary>
    private static double Steepest(ReadOnlySpan<PressureSample> run, int top, double seconds, double noise)
    {
        var steepest = 0.0;
        for (int end = top, begin = top; end > 0 && run[top].Seconds - run[end].Seconds < 0.1; end--)
        {
            begin = Math.Min(begin, end - 1);
            while (begin > 0 && run[end].Seconds - run[begin].Seconds < seconds)
                begin--;
            steepest = Math.Max(steepest, (run[end].Bar - run[begin].Bar - (2.5 * noise)) / (run[end].Seconds - run[begin].Seconds));
        }

        return Math.Max(steepest, noise / seconds);
    }

    private static Fitted? Averaged(ReadOnlySpan<PressureSample> stretch, double level, double from, double to, CornerModel.Belief belief)
    {
        var fits = new CornerModel.Told?[Corners * (Knees + 1) * s_openings.Length];
        var freedom = Math.Max(1, stretch.Length - 6);
        for (var round = 1; ; round++)
        {
            var (bestLog, leastSquares) = Fill(stretch, level, from, to, belief, fits);
            if (!double.IsFinite(bestLog))
                return null;
            if (round >= Rounds - 1 && leastSquares > freedom * MostMisfit)
                return null;
            if (round == Rounds)
                return Mixed(fits, bestLog, level);
            if (round == Rounds - 1) // what misfits a little counts as noise
                belief = belief with { Noise = belief.Noise * Math.Sqrt(Math.Max(1, leastSquares / freedom)) };
            (from, to) = Narrowed(fits, bestLog, from, to);
        }
    }

    private static (double BestLog, double LeastSquares) Fill(ReadOnlySpan<PressureSample> stretch, double level, double from, double to, CornerModel.Belief belief, CornerModel.Told?[] fits)
    {
        var (best, least, place) = (double.NegativeInfinity, double.PositiveInfinity, 0);
        for (var c = 0; c < Corners; c++)
        {
            var corner = from + ((to - from) * (c + 0.5) / Corners);
            for (var k = 0; k <= Knees; k++)
            {
                var knee = stretch[0].Seconds + ((corner - stretch[0].Seconds) * k / (Knees + 1));
                foreach (var opening in s_openings)
                {
                    var fit = new CornerModel(knee, corner, opening).Fit(stretch, level, belief);
                    if (fit is { } f && k > 0)
                        fit = f with { LogEvidence = f.LogEvidence - Math.Log(Knees) }; // no knee and any knee are as likely
                    fits[place++] = fit;
                    (best, least) = (Math.Max(best, fit?.LogEvidence ?? best), Math.Min(least, fit?.Squares ?? least));
                }
            }
        }

        return (best, least);
    }

    /// <summary>The part of the range of corners that has weight, and one cell to each side.</summary>
    private static (double From, double To) Narrowed(CornerModel.Told?[] fits, double bestLog, double from, double to)
    {
        var (low, high, each) = (Corners, -1, fits.Length / Corners);
        for (var i = 0; i < fits.Length; i++)
        {
            if (fits[i] is { } fit && fit.LogEvidence > bestLog - GivenUp)
                (low, high) = (Math.Min(low, i / each), Math.Max(high, i / each));
        }

        var cell = (to - from) / Corners;
        return (Math.Max(from, from + ((low - 1) * cell)), Math.Min(to, from + ((high + 2) * cell)));
    }

    private static Fitted? Mixed(CornerModel.Told?[] fits, double bestLog, double level)
    {
        var (sum, mean, second, rise) = (0.0, 0.0, 0.0, 0.0);
        foreach (var fit in fits)
        {
            if (fit is not { } f)
                continue;
            var weight = Math.Exp(f.LogEvidence - bestLog);
            (sum, mean, second, rise) = (sum + weight, mean + (weight * f.Bar), second + (weight * (f.Variance + (f.Bar * f.Bar))), rise + (weight * f.RiseBarPerSecond));
        }

        (mean, second, rise) = (mean / sum, second / sum, rise / sum);
        return new(level + mean, Math.Sqrt(Math.Max(0, second - (mean * mean))), rise, PeakMethod.Corner);
    }
}
