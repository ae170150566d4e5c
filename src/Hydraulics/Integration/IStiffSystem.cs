namespace Ramwright.Hydraulics.Integration;

/// <summary>An autonomous system y' = f(y) with its Jacobian, and gauges whose rising zeros are events.</summary>
public interface IStiffSystem
{
    /// <summary>Number of states, 1 to 32.</summary>
    int Size { get; }

    /// <summary>Number of gauges, 0 to 32.</summary>
    int GaugeCount { get; }

    /// <summary>The slope f(y), one value per state.</summary>
    void Slope(ReadOnlySpan<double> state, Span<double> slope);

    /// <summary>∂f/∂y, row by row; all entries are written.</summary>
    void Jacobian(ReadOnlySpan<double> state, Span<double> jacobian);

    /// <summary>The gauges: an event happens where one rises from below zero to zero. A gauge that is not watched stands below zero.</summary>
    void Gauges(ReadOnlySpan<double> state, Span<double> gauges);
}
