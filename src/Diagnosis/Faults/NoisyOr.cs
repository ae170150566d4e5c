using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Faults;

/// <summary>A finding that must be explained: by itself with the probability <paramref name="Leak"/>, or by a fault that is present, each independently of the rest.</summary>
/// <param name="Leak">Probability that it comes without any of the faults, 0 to 1.</param>
/// <param name="Causes">Faults by place, each once, with the probability that it brings the finding, 0 to 1.</param>
internal sealed record Positive(double Leak, ImmutableArray<(int Fault, double Chance)> Causes);

/// <summary>Independent faults, and findings that all must be explained: what every kind of evidence comes to.</summary>
/// <remarks>
/// P(x, e) = e^LogConstant · Π w₁ᵢ^{xᵢ} w₀ᵢ^{1−xᵢ} · Π_d (1 − (1 − ℓ_d) Π (1 − c_di)^{xᵢ}). Whatever speaks about each fault by itself (prior rates, findings
/// that are absent, Bayes factors of a recording) is in the weights; only findings that are present tie faults together.
/// </remarks>
internal sealed class NoisyOr
{
    public NoisyOr(ReadOnlySpan<double> rates)
    {
        Present = rates.ToArray();
        Absent = [.. Present.Select(p => 1 - p)];
    }

    /// <summary>w₁ by fault.</summary>
    public double[] Present { get; }

    /// <summary>w₀ by fault.</summary>
    public double[] Absent { get; }

    public List<Positive> Positives { get; } = [];

    /// <summary>Logarithm of the factors that hold whatever the faults are.</summary>
    public double LogConstant { get; set; }

    public int Count => Present.Length;

    /// <summary>A likelihood ratio for one fault, zero or more. The two weights are scaled to a sum of 1.</summary>
    public void Weigh(int fault, double ratio)
    {
        Present[fault] *= ratio;
        var sum = Present[fault] + Absent[fault];
        if (sum <= 0)
        {
            LogConstant = double.NegativeInfinity;
            return;
        }

        Present[fault] /= sum;
        Absent[fault] /= sum;
        LogConstant += Math.Log(sum);
    }

    /// <summary>Takes a fault as known to be there or not; the probability of that is not counted.</summary>
    public void Fix(int fault, bool there) => (Present[fault], Absent[fault]) = there ? (1, 0) : (0, 1);

    /// <summary>P(exactly these faults, e), as a logarithm.</summary>
    public double LogJoint(IReadOnlySet<int> faults)
    {
        var log = LogConstant;
        for (var i = 0; i < Count; i++)
            log += Math.Log(faults.Contains(i) ? Present[i] : Absent[i]);
        foreach (var (leak, causes) in Positives)
        {
            var none = Math.Log(1 - leak);
            foreach (var (fault, chance) in causes)
                none += faults.Contains(fault) ? Math.Log(1 - chance) : 0;
            log += Math.Log(-Expm1(none)); // 1 − e^none without loss where little explains it
        }

        return log;
    }

    /// <summary>eˣ − 1 with all its digits near zero (W. Kahan's form; from memory).</summary>
    private static double Expm1(double x)
    {
        if (double.IsNegativeInfinity(x) || Math.Abs(x) > 0.5)
            return Math.Exp(x) - 1;
        var y = Math.Exp(x);
        return y == 1 ? x : y - 1 == -1 ? -1 : (y - 1) * x / Math.Log(y);
    }
}
