using System.Globalization;
using Ramwright.Hydraulics.Identification;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>Figures of a recording with units that a person reads.</summary>
public static class FigureWords
{
    public static string NameOf(string parameter) => parameter switch
    {
        ParameterName.PumpFill => "filling of the pump",
        ParameterName.HoldLeak => "leak in a pause",
        ParameterName.DeliveryCheckLeak => "leak of the delivery check",
        ParameterName.InletLeak => "leak of the inlet check",
        ParameterName.PistonLeak => "leak of the pump piston",
        ParameterName.BypassLeak => "leak past ram seal or relief seat",
        ParameterName.EntrainedAir => "air in the oil",
        ParameterName.ReliefOpening => "relief opens at",
        ParameterName.ReliefClosing => "relief closes at",
        ParameterName.SupplyVoltage => "supply without load",
        ParameterName.DriveResistance => "resistance of the drive",
        ParameterName.RamFriction => "friction of the ram",
        ParameterName.SealFriction => "seal friction, of the force",
        ParameterName.UsableOil => "oil that the reservoir gives",
        _ => parameter,
    };

    public static string Value(IdentifiedParameter p) => Show(p.Value, p.Unit);

    public static string Interval(IdentifiedParameter p) => double.IsFinite(p.High) && double.IsFinite(p.Low) ? $"{Show(p.Low, p.Unit)} to {Show(p.High, p.Unit)}" : "no limit";

    /// <summary>Leaks in cubic centimetres a minute at 500 bar: what a technician can picture.</summary>
    private static string Show(double value, string unit) => unit switch
    {
        "fraction" => F(100 * value, Math.Abs(value) < 0.1 ? "0.0" : "0") + " %",
        "m³/s/Pa" => F(value * 500e5 * 60e6, "0.0") + " cm³/min at 500 bar",
        "Ω" => F(1e3 * value, "0") + " mΩ",
        "V" => F(value, "0.0") + " V",
        "bar" => F(value, "0.0") + " bar",
        _ => F(value, "0") + " " + unit,
    };

    private static string F(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
