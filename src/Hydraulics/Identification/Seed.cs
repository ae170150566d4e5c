namespace Ramwright.Hydraulics.Identification;

/// <summary>Where the fits begin: pump angles and resistance are searched on a grid, since the angle repeats every turn.</summary>
internal static class Seed
{
    private static readonly double[] OhmFactors = [0.8, 0.9, 1, 1.1, 1.22];

    private static readonly double[] ClosedLaterSeconds = [-0.006, 0, 0.006];

    /// <summary>The most promising beginnings, best first.</summary>
    public static List<double[]> Of(StrokeEvidence evidence, StrokeProblem problem, int most)
    {
        var x = problem.AllPriors.Select(p => p.Mean).ToArray();
        var tool = evidence.Tool;
        var ohms = evidence.Drive.RunUpOhms ?? tool.ResistanceOhms;
        x[Unknown.LogOhms] = Math.Log(ohms);
        x[Unknown.Volts] = evidence.Drive.BackVolts is { } back ? back + ohms * evidence.Drive.AdvanceAmperes : tool.SupplyVolts;
        var standing = Standing(evidence);
        if (evidence.Turns is { } turns)
            x[Unknown.Filling] = Filling(turns, problem, x);
        var found = new List<(double Cost, double[] X)>();
        foreach (var factor in evidence.TurnsAreSeen ? OhmFactors : [1.0])
        {
            foreach (var (delivery, chamber, bypass) in new[] { (0.0, 0.0, standing), (2e-14, 0, standing), (2.5 * standing, 2 * standing, 0) })
            {
                var trial = (double[])x.Clone();
                trial[Unknown.LogOhms] = Math.Log(ohms * factor);
                trial[Unknown.Volts] += ohms * (factor - 1) * evidence.Drive.AdvanceAmperes;
                foreach (var (place, value) in new[] { (Unknown.LogDelivery, delivery), (Unknown.LogChamber, chamber), (Unknown.LogBypass, bypass) })
                    trial[place] = Math.Clamp(Math.Log(Math.Max(value, 1e-18)), problem.AllPriors[place].Least, problem.AllPriors[place].Most);
                var cost = 0.0;
                for (var build = 0; build < evidence.Builds.Count; build++)
                    cost += BestAngle(evidence, problem, trial, build);
                found.Add((cost, trial));
            }
        }

        return [.. found.OrderBy(f => f.Cost).Take(most).Select(f => f.X)];
    }

    /// <summary>The wide fit's answer with the leaks of this hypothesis, and sound ones for the others; with a second start for leaks that share the loss.</summary>
    public static IEnumerable<double[]> Starts(StrokeEvidence evidence, StrokeProblem problem, LeakSet leaks, double[] wide)
    {
        var x = (double[])wide.Clone();
        var priors = problem.AllPriors;
        foreach (var (has, place) in new[] { (leaks.Delivery, Unknown.LogDelivery), (leaks.Chamber, Unknown.LogChamber), (leaks.Bypass, Unknown.LogBypass) })
            x[place] = has ? Math.Max(wide[place], Math.Log(3e-16)) : priors[place].Mean;
        if (!leaks.Weep)
            (x[Unknown.LogWeep], x[Unknown.WeepShare]) = (priors[Unknown.LogWeep].Mean, priors[Unknown.WeepShare].Mean);
        else
            (x[Unknown.LogWeep], x[Unknown.WeepShare]) = (Math.Log(0.15), 0.8);
        yield return x;
        var standing = Math.Log(Math.Max(3e-16, Standing(evidence)));
        if (leaks is { Delivery: true, Chamber: true })
        {
            var y = (double[])x.Clone();
            (y[Unknown.LogDelivery], y[Unknown.LogChamber]) = (standing + Math.Log(2), standing + Math.Log(2));
            if (leaks.Bypass)
                y[Unknown.LogBypass] = priors[Unknown.LogBypass].Least;
            yield return y;
        }
        else if (leaks.Bypass || leaks.Delivery)
        {
            var y = (double[])x.Clone();
            y[leaks.Bypass ? Unknown.LogBypass : Unknown.LogDelivery] = standing;
            yield return y;
        }
    }

    /// <summary>The loss in the first pause by its mean slope, m³/s per pascal.</summary>
    private static double Standing(StrokeEvidence evidence)
    {
        if (evidence.Pauses.Count == 0)
            return 0;
        var (pascals, seconds) = (evidence.Pauses[0].Pascals, evidence.Pauses[0].Decay.Seconds);
        var half = Array.FindIndex(pascals, p => p < 0.6 * pascals[0]);
        half = half < 4 ? pascals.Length - 1 : half;
        var from = pascals[0] - pascals[half] < 0.1 * pascals[0] ? half / 2 : 0;
        var tool = evidence.Tool;
        var compliance = (tool.DeadCubicMetres + tool.RamSquareMetres * tool.StrokeMetres) / tool.Oil.ModulusPascals(pascals[0]);
        return Math.Max(0, pascals[from] - pascals[half]) / (seconds[half] - seconds[from]) * compliance / Math.Max(1e5, 0.5 * (pascals[from] + pascals[half]));
    }

    private static double Filling(TurnCount turns, StrokeProblem problem, double[] x)
    {
        double low = 0.03, high = 1.4;
        for (var i = 0; i < 40; i++)
        {
            x[Unknown.Filling] = 0.5 * (low + high);
            (low, high) = turns.Residual(problem.StateOf(x)) < 0 ? (x[Unknown.Filling], high) : (low, x[Unknown.Filling]);
        }

        return 0.5 * (low + high);
    }

    /// <summary>Puts the pump's angle, and for a rise from its foot the closing of the dies, where they fit best on a grid.</summary>
    /// <returns>Sum of squares there.</returns>
    public static double BestAngle(StrokeEvidence evidence, StrokeProblem problem, double[] x, int build)
    {
        var residuals = new double[problem.Rows(build)];
        var place = problem.PlaceOfBuild(build);
        var (best, angle, begin) = (double.MaxValue, 0.0, x[place + Unknown.Begin]);
        var first = begin;
        foreach (var later in evidence.Builds[build].Rise.FromFoot ? ClosedLaterSeconds : [0.0])
        {
            x[place + Unknown.Begin] = first + later;
            for (var k = 0; k < (evidence.TurnsAreSeen ? 12 : 1); k++)
            {
                x[place + Unknown.Angle] = 2 * Math.PI * k / 12;
                problem.Evaluate(build, x, residuals);
                var sum = 0.0;
                foreach (var r in residuals)
                    sum += r * r;
                if (sum < best)
                    (best, angle, begin) = (sum, x[place + Unknown.Angle], x[place + Unknown.Begin]);
            }
        }

        (x[place + Unknown.Angle], x[place + Unknown.Begin]) = (angle, begin);
        return best;
    }
}
