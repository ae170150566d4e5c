using System.Diagnostics;

namespace Ramwright.Diagnosis.Faults;

/// <summary>The exact sums of a <see cref="NoisyOr"/> problem.</summary>
/// <param name="LogEvidence">Logarithm of P(e); −∞ when what is known cannot be.</param>
/// <param name="Marginals">P(fault | e) by fault, 0 to 1; empty when what is known cannot be.</param>
internal sealed record FrontierSum(double LogEvidence, double[] Marginals)
{
    private const double Small = 1e-100;

    /// <remarks>
    /// A present finding says: at least one cause fired. Faults are taken in one after another; the state is which of the open findings are explained
    /// so far, so a table has 2^open cells. Each causal act is a step g(S ∪ d) += c·g(S), g(S) *= 1 − c. Nothing is ever subtracted, so there is no
    /// cancellation, which inclusion–exclusion over present findings (D. Heckerman, A tractable inference algorithm for diagnosing multiple
    /// diseases, UAI 1989) suffers from when leaks are small. A sweep back with the transposed steps gives all marginals at twice the work.
    /// </remarks>
    public static FrontierSum Of(NoisyOr problem, FrontierOrder order)
    {
        var marginals = new double[problem.Count];
        for (var i = 0; i < marginals.Length; i++)
            marginals[i] = problem.Present[i] / (problem.Present[i] + problem.Absent[i]);
        var log = problem.LogConstant;
        foreach (var alone in problem.Positives.Where(p => p.Causes.All(c => c.Chance <= 0)))
            log += Math.Log(alone.Leak);
        var untouched = Enumerable.Range(0, problem.Count).Except(order.Steps.Select(s => s.Fault));
        foreach (var fault in untouched)
            log += Math.Log(problem.Present[fault] + problem.Absent[fault]);

        var open = new List<int>();
        var forward = new double[order.Steps.Length][];
        var bits = new int[order.Steps.Length][];
        var closed = Array.ConvertAll(forward, _ => new List<int>());
        double[] sets = [1.0];
        for (var t = 0; t < forward.Length; t++)
        {
            var step = order.Steps[t];
            foreach (var finding in step.Opens)
            {
                sets = ExplainedSets.Open(sets, problem.Positives[finding].Leak);
                open.Add(finding);
            }

            forward[t] = sets;
            bits[t] = [.. step.Touches.Select(f => open.IndexOf(f.Finding))];
            sets = TakeIn(problem, step, sets, bits[t], ref log);
            foreach (var bit in step.Closes.Select(open.IndexOf).OrderDescending())
            {
                sets = ExplainedSets.Close(sets, bit);
                open.RemoveAt(bit);
                closed[t].Add(bit);
            }
        }

        Debug.Assert(sets.Length == 1 && open.Count == 0, "Every finding was closed.");
        log += Math.Log(sets[0]);
        if (double.IsFinite(log))
            Back(problem, order, (forward, bits, closed), marginals);
        return double.IsFinite(log) ? new(log, marginals) : new(double.NegativeInfinity, []);
    }

    private static double[] TakeIn(NoisyOr problem, FrontierStep step, double[] sets, int[] bits, ref double log)
    {
        var fired = (double[])sets.Clone();
        for (var f = 0; f < bits.Length; f++)
            ExplainedSets.Explain(fired, bits[f], step.Touches[f].Chance);
        ExplainedSets.Mix(fired, problem.Present[step.Fault], sets, problem.Absent[step.Fault]);
        var greatest = fired.Max();
        if (greatest is > 0 and < Small)
        {
            ExplainedSets.Mix(fired, 1 / greatest, fired, 0);
            log += Math.Log(greatest);
        }

        return fired;
    }

    private static void Back(NoisyOr problem, FrontierOrder order, (double[][] Sets, int[][] Bits, List<int>[] Closed) forward, double[] marginals)
    {
        double[] back = [1.0];
        for (var t = order.Steps.Length - 1; t >= 0; t--)
        {
            var step = order.Steps[t];
            for (var c = forward.Closed[t].Count - 1; c >= 0; c--)
                back = ExplainedSets.CloseBack(back, forward.Closed[t][c]);
            var fired = (double[])back.Clone();
            for (var f = step.Touches.Length - 1; f >= 0; f--)
                ExplainedSets.ExplainBack(fired, forward.Bits[t][f], step.Touches[f].Chance);
            var (present, absent) = (problem.Present[step.Fault], problem.Absent[step.Fault]);
            var (with, without) = (present * ExplainedSets.Dot(forward.Sets[t], fired), absent * ExplainedSets.Dot(forward.Sets[t], back));
            marginals[step.Fault] = with / (with + without);
            ExplainedSets.Mix(back, absent, fired, present);
            foreach (var finding in step.Opens.Reverse())
                back = ExplainedSets.OpenBack(back, problem.Positives[finding].Leak);
            if (back.Max() is > 0 and < Small and var greatest)
                ExplainedSets.Mix(back, 1 / greatest, back, 0);
        }
    }
}
