namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// How far a row may be off: what the residuals of the widest hypothesis show, widened for neighbours that err together, never below the sensor's own noise.
/// So what the reduced model cannot follow counts as noise, and intervals stay honest.
/// </summary>
internal static class Noise
{
    /// <param name="evidence">Its deviations are set.</param>
    /// <param name="problem">Hypothesis.</param>
    /// <param name="unknowns">Where it stands.</param>
    /// <param name="mostPascals">Not above this for a build: early on, a poor fit must not pass for noise.</param>
    /// <returns>Whether a deviation changed by a fifth or more.</returns>
    public static bool Measure(StrokeEvidence evidence, StrokeProblem problem, double[] unknowns, double mostPascals = double.PositiveInfinity)
    {
        var changed = false;
        for (var build = 0; build < evidence.Builds.Count; build++)
        {
            var part = evidence.Builds[build];
            var before = part.DeviationPascals;
            part.DeviationPascals = Math.Min(mostPascals, Effective(problem, build, unknowns, before, evidence.Signal.NoisePascals));
            changed |= Math.Abs(Math.Log(part.DeviationPascals / before)) > 0.2;
        }

        for (var pause = 0; pause < evidence.Pauses.Count; pause++)
        {
            var part = evidence.Pauses[pause];
            var before = part.DeviationPascals;
            part.DeviationPascals = Effective(problem, evidence.Builds.Count + pause, unknowns, before, 0.15e5);
            changed |= Math.Abs(Math.Log(part.DeviationPascals / before)) > 0.2;
        }

        return changed;
    }

    /// <summary>Standard deviation × √(1 + 2·Σ autocorrelation): as if rows were independent.</summary>
    private static double Effective(StrokeProblem problem, int block, double[] unknowns, double deviation, double least)
    {
        var r = new double[problem.Rows(block)];
        problem.Evaluate(block, unknowns, r);
        var variance = r.Sum(v => v * v) / Math.Max(1, r.Count(v => v != 0));
        var time = 1.0;
        for (var shift = 1; shift < r.Length / 3; shift++)
        {
            var sum = 0.0;
            for (var i = shift; i < r.Length; i++)
                sum += r[i] * r[i - shift];
            var correlation = sum / (r.Length * Math.Max(variance, 1e-12));
            if (correlation < 0.05)
                break;
            time += 2 * correlation;
        }

        return Math.Max(least, deviation * Math.Sqrt(variance * time));
    }
}
