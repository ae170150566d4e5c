using CsCheck;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Tests.Strokes;

/// <summary>Tools that nobody builds but somebody could: a tool with each figure drawn wide, and faults on top. All invented.</summary>
internal sealed record MadeUpTool(StrokeParameters Parameters, bool Pause)
{
    public StrokePlan Plan => Pause ? new StrokePlan { PausePascals = 0.6 * Parameters.ReliefPascals, PauseSeconds = 1 } : new StrokePlan();
}

internal static class MadeUpTools
{
    /// <summary>Each figure drawn around those of a healthy tool.</summary>
    public static Gen<MadeUpTool> Like(StrokeParameters healthy) =>
        from drive in Gen.Select(Gen.Double[12, 24], Gen.Double[0.03, 0.15], Gen.Double[0.8, 1.3])
        from pump in Gen.Select(Gen.Double[0.06, 0.3], Gen.Double[0.5, 1], Gen.Bool)
        from leaks in Gen.Select(Exponent(-17, -14), Exponent(-17, -14), Exponent(-17, -14.5), Gen.Double[0, 1])
        from ram in Gen.Select(Gen.Double[25, 50], Gen.Double[10, 30], Gen.Double[50, 600], Gen.Double[0, 0.05])
        from relief in Gen.Select(Gen.Double[400, 800], Gen.Double[0.005, 0.3], Gen.Double[1e-4, 3e-3])
        from oil in Gen.Select(Gen.Double[0, 0.08], Gen.Double[15, 150], Gen.Bool)
        select Make(healthy, drive, pump, leaks, ram, relief, oil);

    /// <summary>Events in their order; a ram that moves out and home again by a hair at the end of the return counts once.</summary>
    public static IEnumerable<StrokeEventKind> Named(Stroke stroke) => stroke.Events
        .Where(e => e.Kind is not StrokeEventKind.RamMoves and not StrokeEventKind.MotorStalled and not StrokeEventKind.DiesParted)
        .Select(e => e.Kind).Distinct();

    private static Gen<double> Exponent(double least, double most) => Gen.Double[least, most].Select(e => Math.Pow(10, e));

    private static MadeUpTool Make(
        StrokeParameters healthy,
        (double Volts, double Ohms, double Constant) drive,
        (double Cubic, double Filling, bool Port) pump,
        (double Delivery, double Inlet, double Bypass, double Weep) leaks,
        (double Diameter, double Stroke, double Friction, double Seal) ram,
        (double Bar, double Closing, double Seconds) relief,
        (double Air, double Usable, bool Pause) oil) => new(
        healthy with
        {
            SupplyVolts = drive.Volts,
            ResistanceOhms = drive.Ohms,
            TorqueConstant = drive.Constant * healthy.TorqueConstant,
            DisplacementCubicMetres = pump.Cubic * 1e-6,
            Filling = pump.Filling,
            Inlet = pump.Port ? InletKind.Port : InletKind.Check,
            DeliveryLeak = leaks.Delivery,
            InletLeak = pump.Port ? 0 : leaks.Inlet,
            BypassLeak = leaks.Bypass,
            WeepLeak = leaks.Weep < 0.2 ? 2e-15 : 0,
            RamSquareMetres = Math.PI / 4 * ram.Diameter * ram.Diameter * 1e-6,
            StrokeMetres = ram.Stroke * 1e-3,
            DryFrictionNewtons = ram.Friction,
            SealFrictionShare = ram.Seal,
            ReliefPascals = relief.Bar * 1e5,
            ClosingRatio = relief.Closing,
            ReliefSeconds = relief.Seconds,
            Oil = healthy.Oil with { AirShare = oil.Air },
            UsableOilCubicMetres = oil.Usable * 1e-6,
        },
        oil.Pause);
}
