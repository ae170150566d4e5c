using Ramwright.Metrology.Quantities;

namespace Ramwright.Metrology.Text;

/// <summary>Quantities as a person reads them, each with its unit: <c>699.4 bar</c>, <c>10,144 psi</c>.</summary>
/// <remarks>
/// Invariant in form: decimal point, thousands by comma. Without <c>decimals</c> each unit has its own usual number of places and
/// drops trailing zeros; with it the places are fixed, for columns. <see cref="Parts(Pressure, UnitSystem, int?)"/> gives number and unit apart.
/// </remarks>
public static class QuantityText
{
    public static string Show(Pressure pressure, UnitSystem system, int? decimals = null) => Parts(pressure, system, decimals).ToString();

    public static string Show(Force force, UnitSystem system, int? decimals = null) => Parts(force, system, decimals).ToString();

    public static string Show(Torque torque, UnitSystem system, int? decimals = null) => Parts(torque, system, decimals).ToString();

    public static string Show(Length length, UnitSystem system, int? decimals = null) => Parts(length, system, decimals).ToString();

    public static string Show(Volume volume, UnitSystem system, int? decimals = null) => Parts(volume, system, decimals).ToString();

    public static string Show(Mass mass, UnitSystem system, int? decimals = null) => Parts(mass, system, decimals).ToString();

    public static string Show(Stiffness stiffness, UnitSystem system, int? decimals = null) => Parts(stiffness, system, decimals).ToString();

    public static string Show(Temperature temperature, UnitSystem system, int? decimals = null) => Parts(temperature, system, decimals).ToString();

    /// <summary>Degrees in both systems.</summary>
    public static string Show(Angle angle, UnitSystem system, int? decimals = null) => Parts(angle, system, decimals).ToString();

    /// <summary>The same in both systems: see <see cref="TimeText"/>.</summary>
    public static string Show(TimeSpan time) => TimeText.Show(time);

    /// <summary>Two limits with one unit: <c>679..721 bar</c>.</summary>
    public static string Show(PressureWindow window, UnitSystem system, int? decimals = null)
    {
        var max = Parts(window.Max, system, decimals);
        return Parts(window.Min, system, decimals).Number + ".." + max;
    }

    /// <summary>Two limits with one unit: <c>80..90 kN</c>; both in the unit that suits the upper one.</summary>
    public static string Show(ForceWindow window, UnitSystem system, int? decimals = null)
    {
        var kilo = InKilonewtons(window.Max);
        return In(window.Min, system, kilo, decimals).Number + ".." + In(window.Max, system, kilo, decimals);
    }

    public static Shown Parts(Pressure p, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(p.Bar, "bar", decimals, 1)
        : Shown.Of(p.Pascals / ImperialUnits.PascalsPerPsi, "psi", decimals, 0);

    public static Shown Parts(Force f, UnitSystem system, int? decimals = null) => In(f, system, InKilonewtons(f), decimals);

    /// <summary>Below 15 N·m the imperial unit is lbf·in, as on small torque wrenches (<em>common practice</em>).</summary>
    public static Shown Parts(Torque t, UnitSystem system, int? decimals = null)
    {
        if (system == UnitSystem.Metric)
            return Shown.Of(t.NewtonMetres, "N·m", decimals, 1);
        var inches = t.NewtonMetres / (ImperialUnits.NewtonsPerPoundForce * ImperialUnits.MetresPerInch);
        return Math.Abs(t.NewtonMetres) < 15 ? Shown.Of(inches, "lbf·in", decimals, 0) : Shown.Of(inches / 12, "lbf·ft", decimals, 1);
    }

    public static Shown Parts(Length l, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(l.Millimetres, "mm", decimals, 2)
        : Shown.Of(l.Metres / ImperialUnits.MetresPerInch, "in", decimals, 3);

    /// <summary>Millilitres, or US fluid ounces.</summary>
    public static Shown Parts(Volume v, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(v.Millilitres, "ml", decimals, 1)
        : Shown.Of(v.CubicMetres / ImperialUnits.CubicMetresPerFluidOunce, "fl oz", decimals, 2);

    public static Shown Parts(Mass m, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(m.Kilograms, "kg", decimals, 2)
        : Shown.Of(m.Kilograms / ImperialUnits.KilogramsPerPound, "lb", decimals, 1);

    public static Shown Parts(Stiffness k, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(k.NewtonsPerMetre / 1e3, "N/mm", decimals, 1)
        : Shown.Of(k.NewtonsPerMetre * ImperialUnits.MetresPerInch / ImperialUnits.NewtonsPerPoundForce, "lbf/in", decimals, 0);

    public static Shown Parts(Temperature t, UnitSystem system, int? decimals = null) => system == UnitSystem.Metric
        ? Shown.Of(t.Celsius, "°C", decimals, 1)
        : Shown.Of(t.Celsius * 1.8 + 32, "°F", decimals, 0);

    public static Shown Parts(Angle a, UnitSystem _, int? decimals = null) => Shown.Of(a.Degrees, "°", decimals, 1);

    private static bool InKilonewtons(Force f) => Math.Abs(f.Newtons) >= 10_000;

    private static Shown In(Force f, UnitSystem system, bool kilo, int? decimals) => system == UnitSystem.Imperial
        ? Shown.Of(f.Newtons / ImperialUnits.NewtonsPerPoundForce, "lbf", decimals, 0)
        : kilo ? Shown.Of(f.Kilonewtons, "kN", decimals, 1) : Shown.Of(f.Newtons, "N", decimals, 0);
}
