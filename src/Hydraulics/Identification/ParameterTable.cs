using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Identification;

/// <summary>The findings as a table: value, 95 % limits, and whether the recording told them.</summary>
internal static class ParameterTable
{
    /// <summary>A leak or a friction counts as told when its limits lie within this factor of each other.</summary>
    private const double ToldWithin = 4;

    public static ImmutableArray<IdentifiedParameter> Of(Findings f)
    {
        var evidence = f.Evidence;
        var (tool, marks) = (evidence.Tool, evidence.Marks);
        var paused = evidence.Pauses.Count > 0;
        var port = tool.Inlet == InletKind.Port;
        var air = evidence.Builds.Count > 0 && evidence.Builds[0].Rise.FromFoot;
        var current = evidence.Signal.Amperes is not null;
        return
        [
            f.FillingTold
                ? Linear(ParameterName.PumpFill, f.Filling, "fraction", 1, true)
                : Untold(ParameterName.PumpFill, f.Advance.SpringFilling is { } s ? Math.Clamp(s.Filling, 0.1, 1) : tool.Filling, 0.1, 1.05, "fraction", "the dies did not close: close them on nothing"),
            Leak(ParameterName.HoldLeak, f.LogHold, paused, paused ? "" : "no pause: let the trigger go near 60 % of the opening pressure and wait five seconds"),
            Leak(ParameterName.DeliveryCheckLeak, f.LogDelivery, evidence.Builds.Count > 0, "too small or too little of a rise to tell"),
            port ? new(ParameterName.InletLeak, 0, 0, 0, LeakUnit, true, "this pump has no inlet check")
                : Leak(ParameterName.InletLeak, f.LogChamber, evidence.Builds.Count > 0, "too small to tell; with the piston's clearance, which leaks in the same half turn"),
            port ? Leak(ParameterName.PistonLeak, f.LogChamber, evidence.Builds.Count > 0, "too small to tell")
                : Untold(ParameterName.PistonLeak, tool.PistonLeak, 0, Math.Max(10 * tool.PistonLeak, Math.Exp(f.LogChamber.Quantile(0.975))), LeakUnit, "leaks in the same half turn as the inlet check: measure the piston"),
            Leak(ParameterName.BypassLeak, f.LogBypass, evidence.Builds.Count > 0, paused ? "too small to tell beside the other leaks" : "record a stroke with a pause"),
            air ? Linear(ParameterName.EntrainedAir, f.Air, "fraction", 1, true, 0)
                : Untold(ParameterName.EntrainedAir, tool.Oil.AirShare, 0, 0.3, "fraction", marks.Connector ? "a connector hides the foot of the rise: close the dies on nothing" : "the dies did not close: close them on nothing"),
            f.Opening is { } opening ? Linear(ParameterName.ReliefOpening, opening, "bar", 1e-5, true)
                : Untold(ParameterName.ReliefOpening, tool.ReliefPascals / 1e5, Highest(evidence) / 1e5, Math.Max(2 * tool.ReliefPascals, 1.5 * Highest(evidence)) / 1e5, "bar", evidence.TopIsMissing ? "the top of the pressure is missing: use a sensor with more range" : "the relief did not open: hold the trigger until it does"),
            Closing(f),
            current && evidence.Drive.BackVolts is not null ? Linear(ParameterName.SupplyVoltage, f.Volts, "V", 1, true)
                : Linear(ParameterName.SupplyVoltage, f.Volts, "V", 1, false, note: current ? "no ripple of the pump in the current: record at 500 rows per second or more" : "record the current too"),
            Positive(ParameterName.DriveResistance, f.LogOhms, "Ω", current, "record the current too, at 500 rows per second or more"),
            double.IsFinite(f.Advance.FrictionDeviation) ? Linear(ParameterName.RamFriction, Mixture.Of(f.Advance.FrictionNewtons, f.Advance.FrictionDeviation), "N", 1, true, 0)
                : Untold(ParameterName.RamFriction, tool.DryFrictionNewtons, 0, 3 * tool.SpringPreloadNewtons, "N", "no free advance is seen with pressure"),
            Positive(ParameterName.SealFriction, f.LogSeal, "fraction", evidence.Builds.Count > 0, "pressure shows it faintly: compare the force with a load cell"),
            UsableOil(f),
        ];
    }

    private const string LeakUnit = "m³/s/Pa";

    private static IdentifiedParameter UsableOil(Findings f)
    {
        var tool = f.Evidence.Tool;
        if (f.Advance.DrySeconds is { } dry)
        {
            var (drawn, share) = DrawnUntil(f, dry);
            return new(ParameterName.UsableOil, 1e6 * drawn, 1e6 * drawn * (1 - 1.96 * share), 1e6 * drawn * (1 + 1.96 * share), "cm³", true, "");
        }

        var least = f.Evidence.Turns is { } turns ? 1e6 * tool.RamSquareMetres * tool.StrokeMetres * (turns.Turns(ToolState.Sound(tool)) > 0 ? 1 : 0) : 0;
        return Untold(ParameterName.UsableOil, Math.Max(least, 1e6 * tool.UsableOilCubicMetres), least, Math.Max(2 * least, 1e6 * Math.Min(1, 1.5 * tool.UsableOilCubicMetres)), "cm³", "the reservoir did not run dry: it holds at least what was drawn");
    }

    /// <summary>Oil drawn until a time in m³ and its relative deviation: turns × filling, the filling by the spring's rise together with what is usual.</summary>
    public static (double CubicMetres, double Share) DrawnUntil(Findings f, double seconds)
    {
        var evidence = f.Evidence;
        var tool = evidence.Tool;
        var volts = evidence.Drive.BackVolts ?? tool.SupplyVolts - tool.ResistanceOhms * evidence.Drive.AdvanceAmperes;
        var turns = evidence.Marks.Pulls.Sum(p => Math.Max(0, Math.Min(seconds, evidence.Signal.Seconds(p.To)) - evidence.Signal.Seconds(p.From) - 0.03)) * volts / (tool.TorqueConstant * tool.GearRatio * 2 * Math.PI);
        var (filling, deviation) = f.FillingTold ? (f.Filling.Quantile(0.5), 0.02) : (tool.Filling, 0.08);
        if (!f.FillingTold && f.Advance.SpringFilling is { } spring)
        {
            var (a, b) = (1 / (deviation * deviation), 1 / (spring.Deviation * spring.Deviation));
            (filling, deviation) = ((a * filling + b * spring.Filling) / (a + b), Math.Sqrt(1 / (a + b)));
        }

        return (turns * filling * tool.DisplacementCubicMetres, deviation / filling);
    }

    private static IdentifiedParameter Closing(Findings f)
    {
        var tool = f.Evidence.Tool;
        if (f.Closing is not { } closing)
            return Untold(ParameterName.ReliefClosing, tool.ClosingRatio * f.Evidence.OpeningPascals / 1e5, 0, f.Evidence.OpeningPascals / 1e5, "bar", "the way back is not in the recording: record until the ram is home");
        return new(ParameterName.ReliefClosing, closing.Value / 1e5, closing.Low / 1e5, closing.High / 1e5, "bar", closing.Seen, closing.Seen ? "" : "an upper limit: oil still flowed home through the relief at this pressure");
    }

    private static double Highest(StrokeEvidence evidence) => evidence.Signal.Pascals is { } p ? p.Max() : 0;

    private static IdentifiedParameter Linear(string name, Mixture law, string unit, double scale, bool told, double least = double.NegativeInfinity, string note = "") =>
        new(name, Math.Max(least, scale * law.Quantile(0.5)), Math.Max(least, scale * law.Quantile(0.025)), Math.Max(least, scale * law.Quantile(0.975)), unit, told, note);

    private static IdentifiedParameter Leak(string name, Mixture log, bool seen, string note) => Positive(name, log, LeakUnit, seen, note);

    private static IdentifiedParameter Positive(string name, Mixture log, string unit, bool seen, string note)
    {
        var (low, middle, high) = (Math.Exp(log.Quantile(0.025)), Math.Exp(log.Quantile(0.5)), Math.Exp(log.Quantile(0.975)));
        var told = seen && high < ToldWithin * low;
        return new(name, middle, low, high, unit, told, told ? "" : note);
    }

    private static IdentifiedParameter Untold(string name, double value, double low, double high, string unit, string note) => new(name, value, low, high, unit, false, note);
}
