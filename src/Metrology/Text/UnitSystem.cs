namespace Ramwright.Metrology.Text;

/// <summary>Which units a person reads.</summary>
public enum UnitSystem
{
    /// <summary>bar, N or kN, N·m, mm, ml, kg, °C.</summary>
    Metric,

    /// <summary>psi, lbf, lbf·ft or lbf·in, in, US fl oz, lb, °F.</summary>
    Imperial,
}
