using System.Collections.Immutable;

namespace Ramwright.Fluids.Viscosity;

/// <summary>A viscosity grade, ISO VG: kinematic viscosity at 40 °C within 10 % of its midpoint.</summary>
/// <param name="Grade">The number in the name, such as 32.</param>
/// <param name="MidpointCst">Midpoint at 40 °C in mm²/s (cSt).</param>
/// <remarks>ISO 3448:1992, table 1; the limits follow from the midpoint. Grades below 10 and above 1500 from memory.</remarks>
public sealed record ViscosityGrade(int Grade, double MidpointCst)
{
    public static ImmutableArray<ViscosityGrade> All { get; } =
    [
        new(2, 2.2), new(3, 3.2), new(5, 4.6), new(7, 6.8), new(10, 10), new(15, 15), new(22, 22), new(32, 32), new(46, 46), new(68, 68),
        new(100, 100), new(150, 150), new(220, 220), new(320, 320), new(460, 460), new(680, 680), new(1000, 1000), new(1500, 1500), new(2200, 2200), new(3200, 3200),
    ];

    /// <summary>Least viscosity at 40 °C in mm²/s (cSt).</summary>
    public double LeastCst => 0.9 * MidpointCst;

    /// <summary>Greatest viscosity at 40 °C in mm²/s (cSt).</summary>
    public double MostCst => 1.1 * MidpointCst;

    /// <summary>The grade by its number; null when ISO 3448 has none.</summary>
    public static ViscosityGrade? Find(int grade) => All.FirstOrDefault(g => g.Grade == grade);
}
