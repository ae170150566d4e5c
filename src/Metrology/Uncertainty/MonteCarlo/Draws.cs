using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Draws from the spreads of a budget, four at a time.</summary>
/// <remarks>
/// Rules: JCGM 101:2008, 6.4.2 (rectangular), 6.4.5 (triangular), 6.4.6 (U-shaped), 6.4.7 (normal), 6.4.9 (t); clauses from memory.
/// Normal: G. E. P. Box &amp; M. E. Muller, Ann. Math. Stat. 29 (1958) 610. Student's t for any ν: R. W. Bailey, Math. Comp. 62 (1994) 779.
/// </remarks>
internal static class Draws
{
    private const double MostDegreesOfFreedom = 1e6; // beyond, t and normal differ by less than any simulation shows

    /// <summary>Adds a draw from the component to each number; as many as a multiple of eight.</summary>
    public static void Add(Component component, RandomStream random, Span<double> to)
    {
        var target = MemoryMarshal.Cast<double, Vector256<double>>(to);
        var given = component.Spread.Given;
        switch (component.Spread)
        {
            case Spread.Rectangular:
                for (var i = 0; i < target.Length; i++)
                    target[i] += (random.Shares() * 2 - Vector256<double>.One) * given;
                break;
            case Spread.Triangular:
                for (var i = 0; i < target.Length; i++)
                    target[i] += (random.Shares() + random.Shares() - Vector256<double>.One) * given;
                break;
            case Spread.UShaped:
                for (var i = 0; i < target.Length; i++)
                    target[i] += Vector256.Sin(random.Shares() * (2 * Math.PI)) * given;
                break;
            default:
                AddBell(component.Spread.Standard, component.DegreesOfFreedom, random, target);
                break;
        }
    }

    /// <summary>Adds standard normal draws, each times a factor.</summary>
    public static void AddNormal(double factor, RandomStream random, Span<double> to) => AddBell(factor, double.PositiveInfinity, random, MemoryMarshal.Cast<double, Vector256<double>>(to));

    private static void AddBell(double factor, double df, RandomStream random, Span<Vector256<double>> target)
    {
        if (df > MostDegreesOfFreedom)
        {
            for (var i = 0; i < target.Length; i += 2)
            {
                var radius = Vector256.Sqrt(Vector256.Log(random.Shares()) * -2) * factor;
                var (sin, cos) = Vector256.SinCos(random.Shares() * (2 * Math.PI));
                target[i] += radius * cos;
                target[i + 1] += radius * sin;
            }

            return;
        }

        for (var i = 0; i < target.Length; i++)
        {
            var square = (Vector256.Exp(Vector256.Log(random.Shares()) * (-2 / df)) - Vector256<double>.One) * df;
            target[i] += Vector256.Sqrt(square) * Vector256.Cos(random.Shares() * (2 * Math.PI)) * factor;
        }
    }
}
