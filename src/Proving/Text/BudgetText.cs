using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Proving.Reference;

namespace Ramwright.Proving.Text;

/// <summary>A line of a budget in words, one cell for each column.</summary>
/// <param name="Given">With its unit: <c>± 340 N</c>.</param>
/// <param name="Shape">Distribution: <c>normal, U</c>, <c>rectangular</c>.</param>
/// <param name="Divisor"><c>2</c>, <c>√3</c>.</param>
/// <param name="Sensitivity">In the pressure's unit over that of the figure given: <c>8.24 bar/kN</c>.</param>
/// <param name="Standard">Contribution as a standard uncertainty, with its unit.</param>
public sealed record BudgetRow(string What, string Given, string Shape, string Divisor, string Sensitivity, string Standard);

/// <summary>A reference's budget in words.</summary>
public static class BudgetText
{
    /// <summary>The heads of the columns.</summary>
    public static ImmutableArray<string> Heads { get; } = ["contribution", "stated", "distribution", "divisor", "sensitivity", "standard uncertainty"];

    public static string Of(ReferenceKind kind) => kind switch
    {
        ReferenceKind.ForceCell => "force cell",
        ReferenceKind.PortGauge => "port gauge",
        ReferenceKind.PeakHoldGauge => "peak-hold gauge",
        _ => "the tool's own memory",
    };

    public static ImmutableArray<BudgetRow> Rows(ReferenceBudget budget, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return [.. budget.Lines.Select(l => Row(l, units))];
    }

    /// <summary>Combined and expanded: <c>combined 1.57 bar, × 2 = 3.1 bar</c>.</summary>
    public static string Combined(ReferenceBudget budget, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(budget);
        var freedom = budget.DegreesOfFreedom is { } df ? string.Create(CultureInfo.InvariantCulture, $", {df:0.#} degrees of freedom") : "";
        return $"combined {Fine(budget.SystematicStandard, units)}{freedom}; × {Figure(budget.Factor, 3)} = {Fine(budget.Systematic.BelowLimit, units)} either way";
    }

    /// <summary>Peak capture with what it follows from: <c>3 bar, upward alone: 1,000 bar/s × 3 ms</c>.</summary>
    public static string Capture(ReferenceBudget budget, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return string.Create(CultureInfo.InvariantCulture, $"{QuantityText.Show(budget.Capture, units)}, upward alone, added whole: {Rise(Pressure.FromPascals(budget.RisePascalsPerSecond), units)} × {budget.Lateness.TotalMilliseconds:0.###} ms");
    }

    /// <summary>A rise of pressure in each second.</summary>
    public static string Rise(Pressure inASecond, UnitSystem units) => QuantityText.Show(inASecond, units, 0) + "/s";

    /// <summary>How readings are corrected near this pressure; null where they count as shown.</summary>
    public static string? Correction(ReferenceBudget budget, Pressure at, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(budget);
        if (budget.Correction is not { Changes: true } correction)
            return null;
        var change = correction.ChangeAt(at);
        var form = correction.Coefficients.Length switch { 1 => "one correction", 2 => "a straight line", _ => "a parabola" };
        return $"readings are corrected by {form} through the calibration points: {(change.Pascals < 0 ? "−" : "+")}{Fine(Pressure.FromPascals(Math.Abs(change.Pascals)), units)} at {QuantityText.Show(at, units)}";
    }

    /// <summary>One sentence without a full stop, lower case at the start.</summary>
    public static string Of(BudgetRemark remark) => remark switch
    {
        BudgetRemark.DriftAssumed => "nothing is known of its drift yet: as much is taken in a year as its calibration may be off",
        BudgetRemark.TemperatureNotStated => "nobody states what temperature does to it: counted as nothing",
        BudgetRemark.PointsScatterMore => "its calibration points scatter more than the certificate allows: their own scatter counts",
        BudgetRemark.PointsTooFew => "its certificate has too few points for a line: readings count as shown",
        _ => "nobody states its time constant: counted as nothing",
    };

    private static BudgetRow Row(BudgetLine line, UnitSystem units)
    {
        var (given, unit) = Stated(line, units);
        var standard = QuantityText.Parts(line.Standard, units);
        var perUnit = (units == UnitSystem.Metric ? line.Standard.Bar : line.Standard.Pascals / ImperialUnits.PascalsPerPsi) * line.Divisor / given * Math.Sign(line.Sensitivity);
        return new(
            line.What + (line.Effect == Effect.Random ? " (random, in the scatter already)" : ""),
            $"{(line.Shape == SpreadShape.Normal ? "u" : "±")} {Figure(given, 3)} {unit}",
            line.Shape switch { SpreadShape.Expanded or SpreadShape.Normal => "normal", SpreadShape.UShaped => "U-shaped", _ => line.Shape.ToString().ToLowerInvariant() }
                + (line.DegreesOfFreedom is { } df ? string.Create(CultureInfo.InvariantCulture, $", {df:0.#} d.o.f.") : ""),
            line.Shape switch { SpreadShape.Rectangular => "√3", SpreadShape.Triangular => "√6", SpreadShape.UShaped => "√2", _ => Figure(line.Divisor, 3) },
            unit == standard.Unit ? Figure(perUnit, 3) : $"{Figure(perUnit, 3)} {standard.Unit}/{unit}",
            Fine(line.Standard, units));
    }

    private static (double Value, string Unit) Stated(BudgetLine line, UnitSystem units) => (line.Unit, units) switch
    {
        (BudgetUnit.Pressure, UnitSystem.Metric) => (line.Given / 1e5, "bar"),
        (BudgetUnit.Pressure, _) => (line.Given / ImperialUnits.PascalsPerPsi, "psi"),
        (BudgetUnit.Force, UnitSystem.Metric) => (line.Given, "N"),
        (BudgetUnit.Force, _) => (line.Given / ImperialUnits.NewtonsPerPoundForce, "lbf"),
        (BudgetUnit.Length, UnitSystem.Metric) => (line.Given * 1e3, "mm"),
        (BudgetUnit.Length, _) => (line.Given / ImperialUnits.MetresPerInch, "in"),
        _ => (line.Given, "K"),
    };

    private static string Fine(Pressure p, UnitSystem units) => QuantityText.Show(p, units, units == UnitSystem.Metric ? 2 : 1);

    /// <summary>So many significant digits, without an exponent.</summary>
    private static string Figure(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
            return "0";
        var decimals = Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 9);
        return Math.Round(value, decimals).ToString("#,##0." + new string('#', decimals), CultureInfo.InvariantCulture).Replace('-', '−');
    }
}
