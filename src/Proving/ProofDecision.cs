namespace Ramwright.Proving;

/// <summary>Turns a proof series into a verdict.</summary>
public static class ProofDecision
{
    /// <summary>The verdict on a series as it stands.</summary>
    /// <exception cref="ArgumentException">A bug in the caller: more runs than planned, a plan below 2, a share or confidence not inside 0 to 1.</exception>
    public static Verdict Decide(ProofSeries series) => throw new NotSupportedException("Not written yet.");
}
