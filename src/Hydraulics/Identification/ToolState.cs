using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Identification;

/// <summary>The figures of a tool that a recording can reveal, as the fits try them. SI units.</summary>
internal struct ToolState
{
    /// <summary>Share of the displacement that is filled.</summary>
    public double Filling;

    /// <summary>Share of what is not filled that is a void and closes before anything is pressed; the rest makes the stroke smaller.</summary>
    public double VoidShare;

    /// <summary>Leaks in m³/s per pascal at <see cref="LeakAtPascals"/>: delivery check, inlet check with piston clearance, ram seal with relief seat.</summary>
    public double Delivery, Chamber, Bypass;

    /// <summary>Leak flow grows with pressure to this power: 1 in a narrow gap, ½ through an open hole.</summary>
    public double Power;

    /// <summary>Leak of a weeping relief by pascal above its onset, m³/s per pascal, and the onset in pascals.</summary>
    public double Weep, WeepFromPascals;

    /// <summary>Free air at atmospheric pressure, a share of the volume.</summary>
    public double Air;

    /// <summary>Factor on the compliance of oil and frame: what the service data may be off.</summary>
    public double Softness;

    /// <summary>Seal friction as a share of pressure × ram area.</summary>
    public double SealShare;

    public double DryNewtons, SupplyVolts, ResistanceOhms;

    /// <summary>Pressure at which a leak's coefficient is stated, 400 bar.</summary>
    public const double LeakAtPascals = 400e5;

    /// <summary>Leak flow by coefficient at a pressure, m³/s per unit of coefficient.</summary>
    public readonly double Driving(double pascals) =>
        pascals <= 0 ? 0 : Power >= 0.999 ? pascals : pascals * Math.Pow((pascals + 1e4) / LeakAtPascals, Power - 1);

    /// <summary>Leak while the pump stands, m³/s per pascal at <see cref="LeakAtPascals"/>.</summary>
    public readonly double Standing(InletKind inlet) =>
        Bypass + (inlet == InletKind.Port ? Delivery : Delivery + Chamber > 0 ? Delivery * Chamber / (Delivery + Chamber) : 0);

    public readonly double WeepFlow(double pascals) => Weep > 0 && pascals > WeepFromPascals ? Weep * (pascals - WeepFromPascals) : 0;

    public readonly OilWithAir Oil(StrokeParameters tool) => tool.Oil with { AirShare = Air };

    public static ToolState Sound(StrokeParameters tool) => new()
    {
        Filling = tool.Filling,
        Delivery = tool.DeliveryLeak,
        Chamber = tool.InletLeak + tool.PistonLeak,
        Bypass = tool.BypassLeak,
        Power = 1,
        WeepFromPascals = tool.WeepFromShare * tool.ReliefPascals,
        Air = tool.Oil.AirShare,
        Softness = 1,
        SealShare = tool.SealFrictionShare,
        DryNewtons = tool.DryFrictionNewtons,
        SupplyVolts = tool.SupplyVolts,
        ResistanceOhms = tool.ResistanceOhms,
    };
}
