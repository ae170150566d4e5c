using Ramwright.Metrology.Quantities;

namespace Ramwright.Fluids.Viscosity;

/// <summary>Kinematic viscosity of an oil against temperature: a straight line on the Walther chart.</summary>
/// <remarks>
/// log₁₀ log₁₀(ν + 0.7) = A − B·log₁₀ T with ν in mm²/s and T in kelvins: ASTM D341, the form for 2 mm²/s and more.
/// Below 2 mm²/s the standard adds terms that this line leaves out.
/// </remarks>
public sealed record WaltherLine
{
    private const double LeastCst = 2;
    private const double MostCst = 2e7;

    private WaltherLine(double a, double b) => (A, B) = (a, b);

    /// <summary>Intercept A of the line, dimensionless (logarithm).</summary>
    public double A { get; }

    /// <summary>Slope B of the line, dimensionless (logarithm).</summary>
    public double B { get; }

    /// <summary>The line through two measured points.</summary>
    /// <param name="cst1">Viscosity at the first temperature in mm²/s, 2 to 20 000 000.</param>
    /// <param name="at1">First temperature.</param>
    /// <param name="cst2">Viscosity at the second temperature in mm²/s, 2 to 20 000 000.</param>
    /// <param name="at2">Second temperature, unlike the first.</param>
    public static WaltherLine Through(double cst1, Temperature at1, double cst2, Temperature at2)
    {
        var (x1, x2) = (LogKelvins(at1), LogKelvins(at2));
        if (x1 == x2)
            throw new ArgumentException("Two points at one temperature make no line.", nameof(at2));
        var (y1, y2) = (LogLog(cst1, nameof(cst1)), LogLog(cst2, nameof(cst2)));
        var slope = (y1 - y2) / (x2 - x1);
        return new(y1 + slope * x1, slope);
    }

    /// <summary>Viscosity at a temperature in mm²/s (cSt); null where the line leaves 2 to 20 000 000 mm²/s, for which this form is made.</summary>
    public double? CstAt(Temperature temperature)
    {
        var viscosity = Math.Pow(10, Math.Pow(10, A - B * LogKelvins(temperature))) - 0.7;
        return viscosity is >= LeastCst and <= MostCst ? viscosity : null;
    }

    private static double LogLog(double cst, string name) => cst is >= LeastCst and <= MostCst
        ? Math.Log10(Math.Log10(cst + 0.7))
        : throw new ArgumentOutOfRangeException(name, cst, "This form of the line holds from 2 to 20 000 000 mm²/s.");

    private static double LogKelvins(Temperature temperature) => temperature.Kelvins > 0
        ? Math.Log10(temperature.Kelvins)
        : throw new ArgumentOutOfRangeException(nameof(temperature), temperature.Kelvins, "A temperature above absolute zero is wanted, in kelvins.");
}
