using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Tolerance;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>Reasons to look elsewhere than at the screw.</summary>
internal static class Suspicions
{
    /// <summary>Codes that send the job to Find.</summary>
    public static readonly ImmutableHashSet<string> ToFind = ImmutableHashSet.Create(StringComparer.Ordinal, "no-answer", "answers-backwards");

    private const double Clearly = 4; // standard deviations that the expected change must stand out by before its absence means anything

    public static ImmutableArray<Suspicion> Of(IReadOnlyList<SettingRun> runs, ReliefPrior prior, Limits limits, ReliefData? relief, SettingOptions options)
    {
        var found = ImmutableArray.CreateBuilder<Suspicion>();
        if (Answer(runs, prior, options) is { } answer)
            found.Add(answer);
        if (runs.Any(r => r.Peak > limits.Maximum))
            found.Add(new("above-maximum", "a run passed the maximum: quarantine the tool, lower the setting behind a guard and inspect the frame before anything else"));
        if (relief?.Reach is { } reach && !reach.Holds(limits.Nominal))
            found.Add(new("outside-reach", "the model says that the screw cannot reach the nominal pressure: check spring and shims"));
        return found.ToImmutable();
    }

    /// <summary>Compares how the pressure followed the screw with what the prior expects, less the backlash.</summary>
    private static Suspicion? Answer(IReadOnlyList<SettingRun> runs, ReliefPrior prior, SettingOptions options)
    {
        if (runs.Count < 2)
            return null;
        var middle = runs.Average(r => r.Screw.Turns);
        var squares = runs.Sum(r => Math.Pow(r.Screw.Turns - middle, 2));
        if (squares <= 0)
            return null;
        var slope = runs.Sum(r => (r.Screw.Turns - middle) * r.Peak.Bar) / squares;
        var doubt = options.ExpectedScatter.Bar / Math.Sqrt(squares);
        var range = runs.Max(r => r.Screw.Turns) - runs.Min(r => r.Screw.Turns);
        var effective = Math.Max(0, range - options.Backlash.Turns) / range; // share of the travel that must have an effect
        var least = Math.Max(0.3, 1 - 2 * prior.Spread / Math.Abs(prior.BarPerTurn)) * Math.Abs(prior.BarPerTurn) * effective;
        if (least < Clearly * doubt)
            return null;
        var along = slope * Math.Sign(prior.BarPerTurn);
        if (along < -2 * doubt && -along > 0.25 * least)
            return new("answers-backwards", "the pressure moves against the turn: check which way the screw raises, and the model's data of the relief");
        return along + 2 * doubt < 0.5 * least
            ? new("no-answer", "the pressure does not follow the screw: look at spring, poppet and seat, or at electronics that stop below the relief")
            : null;
    }

    /// <summary>Whether the scatter about the line, at its most lucky, still is too large for any centred series to be proven.</summary>
    public static bool ScatterIsTooLarge(ReliefLine line, int runs, Limits limits)
    {
        var df = runs - 2;
        if (df < 3)
            return false;
        var least = Math.Sqrt(line.Residuals / ChiSquared.Quantile(0.95, df)); // lower 95 % bound of σ
        var half = 0.5 * (limits.Pressure.Max - limits.Pressure.Min);
        return Pressure.FromBar(ToleranceFactor.OneSided(Math.Max(2, limits.ProofRuns), 0.95, 0.95) * least) > half;
    }
}
