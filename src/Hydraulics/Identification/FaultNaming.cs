using System.Collections.Immutable;
using System.Globalization;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Identification;

/// <summary>From figures to faults: the probability that a figure lies beyond what a sound tool can have, and why, in plain words.</summary>
/// <remarks>The limits are several times what was seen on sound tools of the invented reference kind, and where they begin to matter: see docs/explanation/how-a-stroke-is-read.md.</remarks>
internal static class FaultNaming
{
    /// <summary>Filling, as a share of the sound tool's.</summary>
    private const double LeastFilling = 0.91;

    /// <summary>Leak in a pause, m³/s per pascal: some 10 bar/s in a tool of this size. Leaks under power only: 3 % of the delivery at 500 bar.</summary>
    private const double MostStandingLeak = 2.5e-16, LossUnderPower = 0.03;

    /// <summary>Without the current the pump's speed is a guess, and a loss must be this many times larger to be named.</summary>
    private const double UnseenDrive = 5;

    private const double MostAir = 0.013, LeastStrength = 0.85, MostDragFactor = 2.5, FrictionOfPreload = 0.4, MostSealShare = 0.035, ReliefBand = 0.03, ClosingFactor = 3;

    public const double LeastShown = 0.15;

    public static ImmutableArray<FoundFault> Of(Findings f, double leastReliefPascals, double mostReliefPascals)
    {
        var found = new List<FoundFault>();
        void Add(string id, string name, double probability, params string[] reasons)
        {
            if (probability >= LeastShown)
                found.Add(new(id, name, Math.Min(probability, 0.999), [.. reasons.Where(r => r.Length > 0)]));
        }

        var tool = f.Evidence.Tool;
        var (marks, signal) = (f.Evidence.Marks, f.Evidence.Signal);
        var dry = f.Advance.DrySeconds is not null;
        var flow = f.Evidence.SoundFlow;
        var underPower = (signal.Amperes is null ? UnseenDrive : 1) * 2 * LossUnderPower * flow / 500e5;
        var built = f.Evidence.Builds.Count > 0;
        var other = OtherTool(f);
        var fits = 1 - other.Probability;

        if (built && f.Evidence.Builds[0].Rise.FromFoot)
            Add(FaultId.AirInOil, "air in the oil", fits * f.Air.Above(MostAir), $"the foot of the rise is soft: {Percent(f.Air.Quantile(0.5))} air by volume, a sound tool has about {Percent(tool.Oil.AirShare)}");
        if (built)
        {
            var port = tool.Inlet == InletKind.Port;
            Add(FaultId.DeliveryCheckLeaks, "delivery check leaks back", fits * f.LogDelivery.Above(Math.Log(port && f.Evidence.Pauses.Count > 0 ? MostStandingLeak : underPower)),
                $"pressure falls while the pump draws in: {Lost(f.LogDelivery, flow)} of the delivery is lost at 500 bar",
                f.Evidence.Pauses.Count == 0 ? "" : f.LogHold.Quantile(0.5) < Math.Log(MostStandingLeak) ? "the pause holds, so the leak is behind a check that closes: it is felt under power only" : "the pause bleeds down, as it does when nothing behind the delivery check holds");
            if (!port)
                Add(FaultId.InletCheckLeaks, "inlet check leaks back", fits * f.LogChamber.Above(Math.Log(underPower)), $"each delivery stroke brings {Lost(f.LogChamber, flow)} less at 500 bar than it displaces");
            Add(FaultId.BypassLeaks, "ram seal or relief seat leaks", fits * f.LogBypass.Above(Math.Log(f.Evidence.Pauses.Count > 0 ? MostStandingLeak : Math.Max(MostStandingLeak, 0.5 * underPower))),
                f.Evidence.Pauses.Count > 0 ? $"the pause bleeds down: {Fall(f)}" : "pressure rises more slowly the higher it is", "the same loss is there in both halves of a pump turn");
            Add(FaultId.ReliefWeeps, "relief weeps below its setting", fits * f.Weeps, $"a loss that begins near {Bar(f.WeepFromPascals)} and grows up to the opening");
        }

        if (f.FillingTold)
            Add(FaultId.LowFill, "pump fills poorly", fits * f.Filling.Below(LeastFilling * tool.Filling), $"counting its turns to the closing of the dies, the pump fills to {Percent(f.Filling.Quantile(0.5))} of its displacement; {Percent(tool.Filling)} is usual");
        if (f.Opening is { } opening)
        {
            var at = $"it opened at {Bar(opening.Quantile(0.5))}, corrected for the sensor's lag; {Bar(leastReliefPascals)} to {Bar(mostReliefPascals)} is asked";
            Add(FaultId.ReliefLow, "relief set low", opening.Below(leastReliefPascals), at);
            Add(FaultId.ReliefHigh, "relief set high", opening.Above(mostReliefPascals), at);
        }

        if (signal.Amperes is not null)
        {
            var drag = f.Advance.DragNewtonMetres is { } d && d > MostDragFactor * tool.MotorFrictionNewtonMetres ? 0.9 : 0;
            Add(FaultId.WeakDrive, "weak battery, leads or motor", fits * Math.Max(f.Strength.Below(LeastStrength), drag),
                $"{F(f.Volts.Quantile(0.5), "0.0")} V without load, {F(1e3 * Math.Exp(f.LogOhms.Quantile(0.5)), "0")} mΩ in all: at 50 A {Percent(f.Strength.Quantile(0.5))} of a sound drive's speed is left",
                drag > 0 ? $"the motor takes {F(f.Advance.DragNewtonMetres!.Value / tool.TorqueConstant, "0.0")} A only to turn" : "");
        }

        if (dry)
        {
            var (drawn, share) = ParameterTable.DrawnUntil(f, f.Advance.DrySeconds!.Value);
            var swept = tool.RamSquareMetres * tool.StrokeMetres;
            var short_ = Mixture.Of(drawn, share * drawn).Below(Math.Max(1.15 * swept, 0.7 * Math.Min(tool.UsableOilCubicMetres, 10 * swept)));
            Add(FaultId.OilShort, "reservoir short of oil", fits * short_, $"at {F(f.Advance.DrySeconds!.Value, "0.0")} s the motor began to turn without load though the trigger was held: about {F(1e6 * drawn, "0")} cm³ had been drawn");
        }

        var friction = Mixture.Of(f.Advance.FrictionNewtons, Math.Min(f.Advance.FrictionDeviation, 1e9));
        var staysOut = f.Closing is { Seen: true, StaysOut: true } c && c.Value < 0.15 * f.Evidence.OpeningPascals;
        var binds = double.IsFinite(f.Advance.FrictionDeviation) ? friction.Above(FrictionOfPreload * tool.SpringPreloadNewtons) : 0;
        Add(FaultId.RamBinds, "ram binds", fits * Math.Max(binds, staysOut ? 0.6 : 0), binds > 0.05 ? $"the free advance needs {Bar(marks.AdvancePascals)}: {F(f.Advance.FrictionNewtons, "0")} N more than the spring asks" : "", staysOut ? "the ram did not come home after the relief had opened" : "");
        Add(FaultId.SealFriction, "seal friction high", built ? fits * f.LogSeal.Above(Math.Log(MostSealShare)) : 0, $"{Percent(Math.Exp(f.LogSeal.Quantile(0.5)))} of the force stays in the seals: the ram moves late after a pause");
        if (f.Closing is { Seen: true } seen)
        {
            var usual = tool.ClosingRatio * f.Evidence.OpeningPascals;
            var law = Mixture.Of(seen.Value, Math.Max(1e5, (seen.High - seen.Low) / 4));
            Add(FaultId.ReliefSeatDamaged, "relief seat damaged", law.Above(Math.Max(ClosingFactor * usual, usual + 25e5)), $"it closed again at {Bar(seen.Value)}; the areas of a sound seat give {Bar(usual)}, whatever the screw");
        }

        Add(FaultId.OtherTool, "recording of another tool", other.Probability, other.Reasons);
        return [.. found.OrderByDescending(x => x.Probability)];
    }

    /// <summary>Window around a set pressure where none is stated.</summary>
    public static (double Least, double Most) UsualWindow(double setPascals) => ((1 - ReliefBand) * setPascals, (1 + ReliefBand) * setPascals);

    /// <summary>Signs that no fault of this tool explains: a pump that fills to more than it holds, a ram without its spring, oil or frame of another stiffness, a model that does not follow.</summary>
    private static (double Probability, string[] Reasons) OtherTool(Findings f)
    {
        var reasons = new List<string>();
        var tool = f.Evidence.Tool;
        var p = 0.0;
        void Sign(double probability, string reason)
        {
            if (probability < 0.05)
                return;
            p = 1 - (1 - p) * (1 - probability);
            reasons.Add(reason);
        }

        if (f.FillingTold)
            Sign(f.Filling.Above(1.03), $"the ram's travel would take a pump filled to {Percent(f.Filling.Quantile(0.5))}");
        var spring = f.Evidence.Marks.AdvancePascals * tool.RamSquareMetres;
        if (double.IsFinite(f.Advance.FrictionDeviation) && f.Evidence.Marks.AdvancePascals > 0)
            Sign(Mixture.Of(spring, 0.1 * tool.SpringPreloadNewtons).Below(0.55 * tool.SpringPreloadNewtons), $"the free advance takes {Bar(f.Evidence.Marks.AdvancePascals)}: the return spring of this tool alone asks {Bar(tool.SpringPreloadNewtons / tool.RamSquareMetres)}");
        if (f.Evidence.Builds.Count > 0 && f.Evidence.Signal.Amperes is not null)
        {
            Sign(f.LogSoftness.Above(0.065) + f.LogSoftness.Below(-0.065), $"oil and frame give way {F(100 * (Math.Exp(f.LogSoftness.Quantile(0.5)) - 1), "+0;-0")} % against this tool's");
            Sign(0.8 * f.LogSeal.Above(Math.Log(0.15)), $"{Percent(Math.Exp(f.LogSeal.Quantile(0.5)))} of the force would have to stay in the seals");
            Sign(f.Misfit > 12 ? 0.9 : f.Misfit > 7 ? 0.4 : 0, $"no set of faults brings the model nearer than {F(f.Misfit, "0")} times the noise");
        }

        if (f.Evidence.Drive.BackVolts is { } back)
            Sign(back > 1.2 * tool.SupplyVolts ? 0.9 : 0, "the motor turns faster than this tool's can");
        return (p, [.. reasons]);
    }

    private static string Fall(Findings f)
    {
        var pause = f.Evidence.Pauses[0];
        return $"from {Bar(pause.Pascals[0])} to {Bar(pause.Pascals[^1])} in {F(pause.Decay.Seconds[^1] - pause.Decay.Seconds[0], "0.0")} s with the motor standing";
    }

    private static string Lost(Mixture log, double flow) => Percent(Math.Min(1, 0.5 * Math.Exp(log.Quantile(0.5)) * 500e5 / flow));

    private static string Percent(double share) => F(100 * share, share < 0.1 ? "0.0" : "0") + " %";

    private static string Bar(double pascals) => F(pascals / 1e5, "0") + " bar";

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
