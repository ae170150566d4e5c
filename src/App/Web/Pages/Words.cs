using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Units = Ramwright.Records.House.UnitSystem;

namespace Ramwright.App.Web.Pages;

/// <summary>Quantities, days and times as this house reads them.</summary>
public sealed class Words(Units units)
{
    public UnitSystem System { get; } = units == Units.Imperial ? UnitSystem.Imperial : UnitSystem.Metric;

    public string PressureUnit => System == UnitSystem.Metric ? "bar" : "psi";

    /// <summary>The unit in which a force cell is read.</summary>
    public string ForceUnit => System == UnitSystem.Metric ? "kN" : "lbf";

    /// <summary>The unit in which this torque is shown: small ones have their own.</summary>
    public string UnitOf(Torque torque) => QuantityText.Parts(torque, System).Unit;

    public string LengthUnit => System == UnitSystem.Metric ? "mm" : "in";

    public string TemperatureUnit => System == UnitSystem.Metric ? "°C" : "°F";

    public string Show(Pressure p, int? decimals = null) => QuantityText.Show(p, System, decimals);

    public string Show(PressureWindow w) => QuantityText.Show(w, System).Replace("..", " to ", StringComparison.Ordinal);

    public string Show(ForceWindow w) => QuantityText.Show(w, System).Replace("..", " to ", StringComparison.Ordinal);

    public string Show(Force f) => QuantityText.Show(f, System);

    public string Show(Torque t) => QuantityText.Show(t, System);

    public string Show(Length l) => QuantityText.Show(l, System);

    public string Show(Volume v) => QuantityText.Show(v, System);

    public string Show(Mass m) => QuantityText.Show(m, System);

    public string Show(Stiffness s) => QuantityText.Show(s, System);

    public string Show(Temperature t) => QuantityText.Show(t, System);

    public string Show(Angle a) => QuantityText.Show(a, System);

    public string Show(TimeSpan t) => TimeText.Show(t);

    public string Show(Money m) => m.Rounded().ToString();

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A chance that is never shown as certain: <c>over 99.9 %</c>, <c>under 0.01 %</c>.</summary>
    public static string Chance(double chance) => chance switch
    {
        > 0.999 => "over 99.9 %",
        < 0.0001 => "under 0.01 %",
        < 0.01 => Percent(chance, 2),
        _ => Percent(chance),
    };

    public static string Percent(double share, int decimals = 0) => (share * 100).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " %";
}
