using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting.Tests;

/// <summary>Invented limits and relief valves.</summary>
internal static class Tools
{
    public static Limits Limits(double low, double high, double maximum) => new()
    {
        Pressure = new(Pressure.FromBar(low), Pressure.FromBar(high)),
        Nominal = Pressure.FromBar(0.5 * (low + high)),
        Maximum = Pressure.FromBar(maximum),
        ProofRuns = 12,
        Rest = TimeSpan.FromSeconds(40),
    };

    /// <summary>A plain poppet of 2.5 mm whose spring is as stiff as this gain takes.</summary>
    public static ReliefData Relief(double barPerTurn) => new()
    {
        ContactDiameter = Length.FromMillimetres(2.5),
        SpringRate = Stiffness.FromNewtonsPerMetre(Math.Abs(barPerTurn) * 1e5 * Area.OfCircle(Length.FromMillimetres(2.5)).SquareMetres / 0.75e-3),
        Pitch = Length.FromMillimetres(0.75),
        ClockwiseRaises = barPerTurn > 0,
    };
}
