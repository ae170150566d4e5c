namespace Ramwright.Hydraulics.Strokes;

/// <summary>Gauges of the stroke by name; one event each.</summary>
internal static class Gauge
{
    public const int Current = 0, Standstill = 1, Relief = 2, RamOut = 3, RamBack = 4, Dies = 5, ConnectorLeft = 6, ConnectorPressed = 7, Reservoir = 8, Delivery = 9, Weep = 10, Watched = 11, Count = 12;
}

internal sealed partial class StrokeEquations
{
    /// <summary>What is not watched.</summary>
    private const double Idle = -1;

    public int GaugeCount => Gauge.Count;

    public void Gauges(ReadOnlySpan<double> state, Span<double> gauges)
    {
        var laws = LawsAt(state);
        var (speed, pressure, position, velocity) = (state[Speed], state[Pressure], state[Position], state[Velocity]);
        gauges.Fill(Idle);
        gauges[Gauge.Current] = Modes.Drive switch
        {
            DriveMode.Limited => speed - tool.LimitEndsRadiansPerSecond,
            DriveMode.Free when tool.LimitEndsRadiansPerSecond > 0 => tool.LimitEndsRadiansPerSecond - speed,
            _ => Idle,
        };
        gauges[Gauge.Standstill] = Modes.Drive switch
        {
            DriveMode.Standing => Idle,
            DriveMode.Stalled => StallTorqueLeft(laws),
            _ => -speed,
        };
        gauges[Gauge.Relief] = Modes.ReliefOpen ? tool.ClosingRatio * tool.ReliefPascals - pressure : pressure - tool.ReliefPascals;
        (gauges[Gauge.RamOut], gauges[Gauge.RamBack]) = Modes.Ram switch
        {
            RamMode.Home => (laws.Push - laws.Friction, Idle),
            RamMode.Out => (Idle, -velocity),
            RamMode.Back => (velocity, -position),
            _ => (laws.Push - laws.Friction, -laws.Push - laws.Friction),
        };
        gauges[Gauge.Dies] = Modes.DiesClosed ? tool.StrokeMetres - position : position - tool.StrokeMetres;
        (gauges[Gauge.ConnectorLeft], gauges[Gauge.ConnectorPressed]) = Modes.Connector switch
        {
            ConnectorMode.Untouched => (Idle, position - _connector!.ContactMetres),
            ConnectorMode.Elastic => (ConnectorLeftAtMetres - position, Modes.Ram == RamMode.Out ? position - Modes.ConnectorPeakMetres : Idle),
            ConnectorMode.LetGo when Modes.Ram == RamMode.Out => (Idle, position - ConnectorLeftAtMetres),
            _ => (Idle, Idle),
        };
        gauges[Gauge.Reservoir] = Modes.Dry ? -laws.FlowIfFilled : state[Drawn] - tool.UsableOilCubicMetres;
        if (Modes.Turns)
            gauges[Gauge.Delivery] = Modes.Delivering ? -laws.Delivery : laws.Delivery;
        if (tool.WeepLeak > 0)
            gauges[Gauge.Weep] = (Modes.Weeping ? -1 : 1) * (pressure - tool.WeepFromShare * tool.ReliefPascals);
        if (double.IsFinite(Modes.WatchedPascals))
            gauges[Gauge.Watched] = pressure - Modes.WatchedPascals;
    }

    /// <summary>Torque in N·m that a stalled motor has left over; from zero on it turns again.</summary>
    public double StallTorqueLeft(Laws laws) => tool.TorqueConstant * tool.StallAmperes - tool.MotorFrictionNewtonMetres - laws.LoadTorque;
}
