using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>What the battery current says by itself, nothing opened: pump turns to the closing of the dies, the pressure by torque, the supply by speed, a reservoir that runs dry.</summary>
internal sealed class CurrentAlone
{
    private const double LeastFilling = 0.91, LeastSupply = 0.88, DragFactor = 2.5;

    private readonly StrokeSignal signal;
    private readonly StrokeMarks marks;
    private readonly StrokeParameters tool;
    private readonly DriveSigns drive;
    private readonly double volts;
    private readonly TorquePressure torque;
    private readonly LoadMarks at;
    private readonly Mixture filling;

    private CurrentAlone(StrokeSignal signal, StrokeMarks marks, StrokeParameters tool)
    {
        (this.signal, this.marks, this.tool) = (signal, marks, tool);
        // The ripple is sought where the ram runs free: where that ends is found with the usual supply first.
        var first = LoadMarks.Of(signal, marks.Pulls, TorquePressure.Of(signal, marks.Pulls, tool, tool.SupplyVolts), tool);
        drive = DriveSigns.Of(signal, signal.Amperes!, WithFoot(first.Foot), tool);
        var known = tool with { ResistanceOhms = drive.RunUpOhms is { } ohms && ohms > 1.3 * tool.ResistanceOhms ? ohms : tool.ResistanceOhms };
        volts = drive.BackVolts is { } back ? back + known.ResistanceOhms * drive.AdvanceAmperes : tool.SupplyVolts;
        torque = TorquePressure.Of(signal, marks.Pulls, known, volts);
        at = LoadMarks.Of(signal, marks.Pulls, torque, tool);
        filling = Filling();
    }

    public static IdentificationAnswer Read(StrokeSignal signal, StrokeMarks marks, StrokeParameters tool, double leastReliefPascals, double mostReliefPascals)
    {
        var read = new CurrentAlone(signal, marks, tool);
        return new IdentificationAnswer.Told(read.Parameters(), read.Faults(leastReliefPascals, mostReliefPascals), read.Curve(), "the same stroke with the pressure as well, at 1,000 rows per second");
    }

    private StrokeMarks WithFoot(int foot) => new() { Pulls = marks.Pulls, Opened = -1, Foot = foot, Closed = foot, Connector = false, AdvancePascals = 0 };

    /// <summary>Turns of the pump against the volume that the ram sweeps; what the oil gives way by and leaks away meanwhile is small beside the 2 % of doubt.</summary>
    private Mixture Filling()
    {
        if (!at.ClosedOnNothing)
            return Mixture.Of(tool.Filling, 0.08);
        var swept = tool.RamSquareMetres * tool.StrokeMetres + tool.DeadCubicMetres * tool.Oil.Squeeze(tool.SpringPreloadNewtons / tool.RamSquareMetres).Share;
        var share = swept / ((torque.Turns[at.Foot] - torque.Turns[marks.Pulls[0].From]) * tool.DisplacementCubicMetres);
        return Mixture.Of(share, share * (drive.BackVolts is null ? 0.05 : 0.02));
    }

    /// <summary>Opening pressure: the rise by turns, carried on to the moment at which the load falls away.</summary>
    private Mixture? Opening()
    {
        var fill = Math.Clamp(filling.Quantile(0.5), 0.2, 1.05);
        if (at.Opened < 0 || at.Fall(torque, fill * RisePerTurn(fill)) is not { } full)
            return null;
        var pascals = full.Pascals / fill;
        return Mixture.Of(pascals, Math.Sqrt(Math.Pow(TorquePressure.ScaleDeviation * pascals, 2) + Math.Pow(full.Deviation / fill, 2) + Math.Pow(pascals * (at.ClosedOnNothing ? 0.02 : 0.08), 2)));
    }

    /// <summary>By oil and frame near the set pressure, Pa per turn: what is delivered, less what chamber and displaced oil are squeezed by.</summary>
    private double RisePerTurn(double fill)
    {
        var (pascals, step) = (0.8 * tool.ReliefPascals, 10e5);
        double Softness(double volume) => volume * (tool.Oil.Squeeze(pascals + step).Share - tool.Oil.Squeeze(pascals).Share) / step;
        var filled = fill * tool.DisplacementCubicMetres;
        var delivered = filled - (tool.ChamberCubicMetres + filled) * (tool.Oil with { AirShare = 0 }).Squeeze(pascals).Share;
        return Math.Max(0, delivered) / (Softness(tool.DeadCubicMetres + tool.RamSquareMetres * tool.StrokeMetres) + tool.RamSquareMetres * tool.RamSquareMetres / tool.FrameNewtonsPerMetre);
    }

    private ImmutableArray<IdentifiedParameter> Parameters()
    {
        const string Pressure = "record the pressure too";
        IdentifiedParameter Not(string name, double value, double low, double high, string unit, string note = Pressure) => new(name, value, low, high, unit, false, note);
        IdentifiedParameter Law(string name, Mixture law, string unit, double scale, bool told, string note) => new(name, scale * law.Quantile(0.5), scale * law.Quantile(0.025), scale * law.Quantile(0.975), unit, told, told ? "" : note);
        const string Leak = "m³/s/Pa";
        var dry = at.Dry >= 0 ? 1e6 * (torque.Turns[at.Dry] - torque.Turns[marks.Pulls[0].From]) * filling.Quantile(0.5) * tool.DisplacementCubicMetres : (double?)null;
        return
        [
            Law(ParameterName.PumpFill, filling, "fraction", 1, at.ClosedOnNothing, "the closing of the dies is not seen in the current"),
            Not(ParameterName.HoldLeak, tool.StandingLeak + tool.BypassLeak, 0, 1e-14, Leak),
            Not(ParameterName.DeliveryCheckLeak, tool.DeliveryLeak, 0, 1e-14, Leak),
            Not(ParameterName.InletLeak, tool.InletLeak, 0, 1e-14, Leak),
            Not(ParameterName.PistonLeak, tool.PistonLeak, 0, 1e-14, Leak),
            Not(ParameterName.BypassLeak, tool.BypassLeak, 0, 1e-14, Leak),
            Not(ParameterName.EntrainedAir, tool.Oil.AirShare, 0, 0.3, "fraction"),
            Opening() is { } opening ? Law(ParameterName.ReliefOpening, opening, "bar", 1e-5, true, "") : Not(ParameterName.ReliefOpening, tool.ReliefPascals / 1e5, 0, 2e-5 * tool.ReliefPascals, "bar", "the load does not fall away: hold the trigger until the relief opens"),
            Not(ParameterName.ReliefClosing, tool.ClosingRatio * tool.ReliefPascals / 1e5, 0, tool.ReliefPascals / 1e5, "bar"),
            Law(ParameterName.SupplyVoltage, Supply, "V", 1, drive.BackVolts is not null, "no ripple of the pump in the current: record at 500 rows per second or more"),
            Law(ParameterName.DriveResistance, Mixture.Of(drive.RunUpOhms ?? tool.ResistanceOhms, 0.15 * tool.ResistanceOhms), "Ω", 1, drive.RunUpOhms is not null, "the start is not seen finely enough"),
            Not(ParameterName.RamFriction, tool.DryFrictionNewtons, 0, 3 * tool.SpringPreloadNewtons, "N"),
            Not(ParameterName.SealFriction, tool.SealFrictionShare, 0, 0.2, "fraction"),
            dry is { } drawn ? new(ParameterName.UsableOil, drawn, 0.85 * drawn, 1.15 * drawn, "cm³", true, "")
                : Not(ParameterName.UsableOil, 1e6 * tool.UsableOilCubicMetres, 0, 2e6 * tool.UsableOilCubicMetres, "cm³", "the reservoir did not run dry"),
        ];
    }

    private Mixture Supply => Mixture.Of(volts, drive.BackVolts is null ? 0.06 * tool.SupplyVolts : 0.01 * tool.SupplyVolts);

    private ImmutableArray<FoundFault> Faults(double leastRelief, double mostRelief)
    {
        var found = new List<FoundFault>();
        void Add(string id, string name, double probability, string reason)
        {
            if (probability >= FaultNaming.LeastShown)
                found.Add(new(id, name, Math.Min(probability, 0.99), [reason]));
        }

        if (at.ClosedOnNothing)
            Add(FaultId.LowFill, "pump fills poorly", filling.Below(LeastFilling * tool.Filling), $"by its turns to the closing of the dies the pump fills to {Percent(filling.Quantile(0.5))} of its displacement; {Percent(tool.Filling)} is usual");
        if (Opening() is { } opening)
        {
            var words = $"by the motor's torque it opened near {Bar(opening.Quantile(0.5))} (between {Bar(opening.Quantile(0.025))} and {Bar(opening.Quantile(0.975))}); {Bar(leastRelief)} to {Bar(mostRelief)} is asked";
            var (low, high) = OffSetting(opening, leastRelief, mostRelief);
            Add(FaultId.ReliefLow, "relief set low", low, words);
            Add(FaultId.ReliefHigh, "relief set high", high, words);
        }

        var drag = tool.TorqueConstant * drive.AdvanceAmperes;
        Add(FaultId.WeakDrive, "weak battery, leads or motor", Math.Max(drive.BackVolts is null ? 0 : Supply.Below(LeastSupply * tool.SupplyVolts), drive.RunUpOhms is { } ohms ? Mixture.Of(ohms, 0.15 * tool.ResistanceOhms).Above(1.5 * tool.ResistanceOhms) : 0),
            $"{F(volts, "0.0")} V without load{(drive.RunUpOhms is { } r ? $", {F(1e3 * r, "0")} mΩ in all" : "")}; {F(tool.SupplyVolts, "0.0")} V and {F(1e3 * tool.ResistanceOhms, "0")} mΩ are usual");
        Add(FaultId.RamBinds, "ram binds", drag > DragFactor * (tool.MotorFrictionNewtonMetres + SpringTorque) ? 0.6 : 0, $"the free advance takes {F(drive.AdvanceAmperes, "0.0")} A");
        if (at.Dry >= 0)
            Add(FaultId.OilShort, "reservoir short of oil", 0.9, $"at {F(signal.Seconds(at.Dry), "0.0")} s the motor began to turn without load though the trigger was held");
        return [.. found.OrderByDescending(f => f.Probability)];
    }

    /// <summary>Probability that the relief is set low and that it is set high: a reading so wide is weighed with how seldom either is (judged: 7 of 100 each, anywhere from 30 % below to 20 % above).</summary>
    private static (double Low, double High) OffSetting(Mixture opening, double leastRelief, double mostRelief)
    {
        const double Off = 0.07;
        double Share(double from, double to) => (opening.Below(to) - opening.Below(from)) / (to - from);
        var (low, high, right) = (Off * Share(0.7 * leastRelief, leastRelief), Off * Share(mostRelief, 1.2 * mostRelief), (1 - 2 * Off) * Share(leastRelief, mostRelief));
        var sum = low + high + right;
        return sum > 0 ? (low / sum, high / sum) : (opening.Below(leastRelief), opening.Above(mostRelief));
    }

    /// <summary>Torque at the motor that the return spring asks on the mean, N·m.</summary>
    private double SpringTorque => tool.Filling * tool.DisplacementCubicMetres * (tool.SpringPreloadNewtons + 0.5 * tool.SpringNewtonsPerMetre * tool.StrokeMetres + tool.DryFrictionNewtons) / tool.RamSquareMetres / (2 * Math.PI * tool.GearRatio * tool.GearEfficiency);

    private ImmutableArray<FittedPoint> Curve()
    {
        var fill = Math.Clamp(filling.Quantile(0.5), 0.2, 1.05);
        return [.. Enumerable.Range(0, signal.Count).Where(r => double.IsFinite(torque.PascalsIfFull[r]) && (at.Opened < 0 || r <= at.Opened)).Select(r => new FittedPoint(signal.Seconds(r), Math.Max(0, torque.PascalsIfFull[r] / fill)))];
    }

    private static string Percent(double share) => F(100 * share, "0") + " %";

    private static string Bar(double pascals) => F(pascals / 1e5, "0") + " bar";

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
