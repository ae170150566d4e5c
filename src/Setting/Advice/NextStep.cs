using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>What is worth most next: to stop, to turn, or to read once more without a turn.</summary>
internal enum Step { Stop, Turn, Read }

/// <summary>Weighs the three by what they do to the chance of a proof, less what they cost.</summary>
/// <remarks>
/// Value of information by one step of look-ahead: the next reading is laid out in five values with their weights (Gauss–Hermite, Abramowitz &amp; Stegun
/// table 25.10), the belief is updated by each, and the best act after it is taken. A turn with its run costs a fifth of a proof's chance, a reading alone a
/// quarter of that (our choice, from minutes: a proof of a dozen runs that fails has to be made again). To stop is allowed only with the mean in the window with the asked chance.
/// </remarks>
internal static class NextStep
{
    private const double TurnCost = 0.2, ReadCost = 0.05; // in chance of a proof
    private const double MayBeIn = 0.05; // chance of being in the window below which a turn is needed whatever a reading says, and brings its own

    private static readonly (double Score, double Share)[] Readings =
        [(-2.8569700138728, 0.0112574113277207), (-1.35562617997427, 0.222075922005613), (0, 0.533333333333333), (1.35562617997427, 0.222075922005613), (2.8569700138728, 0.0112574113277207)];

    /// <summary>The best step with the turn that belongs to it; zero turns mean that none helps or none is allowed.</summary>
    public static (Step Step, double Turn) Of(Target target, SettingBelief belief, SettingOptions options)
    {
        var turn = TurnChoice.Towards(target, belief, options);
        var inside = target.ChanceInside(belief, 0) >= options.ChanceToStop;
        double stop = target.ChanceToProve(belief, 0), turned = turn == 0 ? double.NegativeInfinity : target.ChanceToProve(belief, turn) - TurnCost;
        if (inside && (turned <= stop || stop > 1 - TurnCost))
            return (Step.Stop, turn);
        return turn == 0 || (target.ChanceInside(belief, 0) > MayBeIn && Read(target, belief.Thinned(), options) > turned) ? (Step.Read, turn) : (Step.Turn, turn);
    }

    private static double Read(Target target, SettingBelief belief, SettingOptions options)
    {
        var (mean, _) = belief.After(0);
        var spread = Math.Sqrt(belief.Mean(s => (s.Level - mean) * (s.Level - mean) + s.LevelVariance + s.Scatter * s.Scatter));
        var worth = -ReadCost;
        foreach (var (score, share) in Readings)
            worth += share * Best(target, belief.Read(mean + spread * score), options);
        return worth;
    }

    /// <summary>Value of the better of stopping and turning.</summary>
    private static double Best(Target target, SettingBelief belief, SettingOptions options)
    {
        var stop = target.ChanceToProve(belief, 0) - (target.ChanceInside(belief, 0) >= options.ChanceToStop ? 0 : TurnCost);
        var turn = TurnChoice.Towards(target, belief, options);
        return turn == 0 ? stop : Math.Max(stop, target.ChanceToProve(belief, turn) - TurnCost);
    }
}
