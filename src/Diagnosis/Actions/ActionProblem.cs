using System.Collections.Immutable;
using System.Numerics;

namespace Ramwright.Diagnosis.Actions;

/// <summary>A remedy as the search sees it.</summary>
/// <param name="Opens">Steps (bits) that must be done for it, alone from a closed tool.</param>
/// <param name="Work">Cost beyond opening, in money.</param>
/// <param name="Mends">By fault: chance that the fault is gone afterwards.</param>
internal sealed record RemedyAct(ulong Opens, double Work, double[] Mends);

/// <summary>A check or measurement as the search sees it.</summary>
/// <param name="Live">Whether the tool must be closed for it.</param>
/// <param name="Likelihood">By outcome and case; for each case the outcomes sum to 1.</param>
/// <param name="Excludes">Other looks (bits) that tell the same: of these one is enough.</param>
internal sealed record LookAct(ulong Opens, double Work, bool Live, double[][] Likelihood, int Excludes);

/// <summary>
/// The decision: cases with weights, remedies and looks, what opening and closing each step costs. A case is a set of faults. A run of the closed tool
/// ends the work if every fault of the case is mended, and each fault is mended by its remedies independently.
/// </summary>
/// <remarks>
/// Looks are taken to answer as the faults were at the start. For a case of one fault that is exact, because after a failed run the fault is still
/// there; for several it is a simplification, put right when the advice is computed anew after each act.
/// </remarks>
internal sealed class ActionProblem
{
    /// <summary>Weights of the cases, summing to 1.</summary>
    public required double[] Weights { get; init; }

    /// <summary>Faults of each case, by place; empty for a sound tool.</summary>
    public required int[][] Cases { get; init; }

    public required ImmutableArray<RemedyAct> Remedies { get; init; }

    public required ImmutableArray<LookAct> Looks { get; init; }

    /// <summary>Cost of each step on the way in, money.</summary>
    public required double[] Opening { get; init; }

    /// <summary>Cost of each step on the way back, money.</summary>
    public required double[] Closing { get; init; }

    /// <summary>Cost of a test run of the closed tool, money.</summary>
    public required double Test { get; init; }

    /// <summary>What a tool that is given up costs, money.</summary>
    public required double GiveUp { get; init; }

    /// <summary>Where the work stands.</summary>
    public required ActionState Start { get; init; }

    /// <summary>The same decision from another state.</summary>
    public ActionProblem From(ActionState state) =>
        new() { Weights = Weights, Cases = Cases, Remedies = Remedies, Looks = Looks, Opening = Opening, Closing = Closing, Test = Test, GiveUp = GiveUp, Start = state };

    /// <summary>The way in, a number of money units.</summary>
    public double OpenCost(ulong from, ulong opens) => Sum(Opening, opens & ~from);

    /// <summary>The way back, a number of money units.</summary>
    public double CloseCost(ulong open) => Sum(Closing, open);

    /// <summary>P(every fault of the case is mended) after some remedies.</summary>
    public double Mended(int remedies, int oneCase)
    {
        var all = 1.0;
        foreach (var fault in Cases[oneCase])
        {
            var stays = 1.0;
            for (var a = 0; a < Remedies.Length; a++)
            {
                if ((remedies >> a & 1) == 1)
                    stays *= 1 - Remedies[a].Mends[fault];
            }

            all *= 1 - stays;
        }

        return all;
    }

    private static double Sum(double[] costs, ulong steps)
    {
        var sum = 0.0;
        for (; steps != 0; steps &= steps - 1)
            sum += costs[BitOperations.TrailingZeroCount(steps)];
        return sum;
    }
}

/// <summary>Where the work stands.</summary>
/// <param name="Tried">Remedies (bits) after which the tool still failed.</param>
/// <param name="Pending">Remedies done since, not run yet.</param>
/// <param name="Seen">Four bits for each look: its outcome plus one, 0 when not made.</param>
/// <param name="Open">Steps (bits) done and not yet closed.</param>
/// <param name="Failed">Whether the closed tool was run and failed.</param>
internal readonly record struct ActionState(int Tried, int Pending, UInt128 Seen, ulong Open, bool Failed);

/// <summary>An act by its kind and place.</summary>
internal readonly record struct Act(ActKind Kind, int Index);

internal enum ActKind
{
    GiveUp,
    Test,
    Remedy,
    Look,
}
