namespace Ramwright.Hydraulics.Strokes;

/// <summary>Changes the laws at an event, so that the state fits them exactly, and says what the event was.</summary>
internal static class StrokeSwitch
{
    /// <summary>Switches at a gauge.</summary>
    /// <returns>What a person would call the event; null where only a law changes.</returns>
    public static StrokeEventKind? At(int gauge, StrokeEquations equations, Span<double> state)
    {
        ref var modes = ref equations.Modes;
        switch (gauge)
        {
            case Gauge.Current:
                modes.Drive = modes.Drive == DriveMode.Limited ? DriveMode.Free : DriveMode.Limited;
                return null;
            case Gauge.Standstill:
                return Standstill(equations, state);
            case Gauge.Relief:
                modes.ReliefOpen = !modes.ReliefOpen;
                modes.ReliefLifts &= modes.ReliefOpen;
                return modes.ReliefOpen ? StrokeEventKind.ReliefOpened : StrokeEventKind.ReliefClosed;
            case Gauge.RamOut or Gauge.RamBack:
                return Ram(gauge, equations, state);
            case Gauge.Dies:
                modes.DiesClosed = !modes.DiesClosed;
                return modes.DiesClosed ? StrokeEventKind.DiesClosed : StrokeEventKind.DiesParted;
            case Gauge.ConnectorLeft:
                modes.Connector = ConnectorMode.LetGo;
                return null;
            case Gauge.ConnectorPressed:
                var first = modes.Connector == ConnectorMode.Untouched;
                modes.Connector = modes.Connector == ConnectorMode.LetGo ? ConnectorMode.Elastic : ConnectorMode.Pressed;
                return first ? StrokeEventKind.ConnectorTouched : null;
            case Gauge.Reservoir:
                modes.Dry = !modes.Dry;
                state[StrokeEquations.Drawn] = equations.Tool.UsableOilCubicMetres;
                return modes.Dry ? StrokeEventKind.ReservoirEmpty : null;
            case Gauge.Delivery:
                modes.Delivering = !modes.Delivering;
                return null;
            case Gauge.Weep:
                modes.Weeping = !modes.Weeping;
                return null;
            default:
                modes.WatchedPascals = double.PositiveInfinity;
                Release(equations, state);
                return StrokeEventKind.TriggerReleased;
        }
    }

    /// <summary>The trigger is pulled, or the electronics switch the motor on.</summary>
    public static void Pull(StrokeEquations equations, Span<double> state)
    {
        var tool = equations.Tool;
        equations.Modes.Drive = state[StrokeEquations.Speed] < tool.LimitEndsRadiansPerSecond ? DriveMode.Limited : DriveMode.Free;
        equations.Modes.Delivering = equations.LawsAt(state).Delivery >= 0;
        if (state[StrokeEquations.Speed] <= 0 && equations.StallTorqueLeft(equations.LawsAt(state)) <= 0)
            equations.Modes.Drive = DriveMode.Stalled;
    }

    /// <summary>The trigger is let go, or the electronics switch the motor off.</summary>
    public static void Release(StrokeEquations equations, Span<double> state)
    {
        if (equations.Modes.Drive != DriveMode.Standing)
            equations.Modes.Drive = state[StrokeEquations.Speed] > 0 ? DriveMode.Braking : DriveMode.Standing;
    }

    private static StrokeEventKind? Standstill(StrokeEquations equations, Span<double> state)
    {
        ref var modes = ref equations.Modes;
        if (modes.Drive == DriveMode.Stalled)
        {
            Pull(equations, state);
            return null;
        }

        state[StrokeEquations.Speed] = 0;
        var braked = modes.Drive == DriveMode.Braking;
        modes.Drive = braked ? DriveMode.Standing : DriveMode.Stalled;
        return braked ? null : StrokeEventKind.MotorStalled;
    }

    private static StrokeEventKind? Ram(int gauge, StrokeEquations equations, Span<double> state)
    {
        ref var modes = ref equations.Modes;
        var was = modes.Ram;
        if (was == RamMode.Back && gauge == Gauge.RamBack)
        {
            (state[StrokeEquations.Position], state[StrokeEquations.Velocity]) = (0, 0);
            modes.Ram = RamMode.Home;
            return StrokeEventKind.RamHome;
        }

        state[StrokeEquations.Velocity] = 0;
        if (was == RamMode.Out && modes.Connector == ConnectorMode.Pressed)
        {
            modes.ConnectorPeakMetres = state[StrokeEquations.Position];
            modes.Connector = ConnectorMode.Elastic;
        }

        modes.Ram = was is RamMode.Home or RamMode.Stuck
            ? gauge == Gauge.RamOut ? RamMode.Out : RamMode.Back
            : AtRest(was, equations, state);
        if (modes.Ram == RamMode.Out && modes.Connector == ConnectorMode.Elastic && state[StrokeEquations.Position] >= modes.ConnectorPeakMetres - 1e-12)
            modes.Connector = ConnectorMode.Pressed;
        return was == RamMode.Home ? StrokeEventKind.RamMoves : null;
    }

    /// <summary>A ram that has just come to rest stays, or turns. It cannot go on the way it came: that would not have stopped it.</summary>
    private static RamMode AtRest(RamMode was, StrokeEquations equations, Span<double> state)
    {
        var laws = equations.LawsAt(state);
        return was == RamMode.Out
            ? laws.Push < -laws.Friction ? RamMode.Back : RamMode.Stuck
            : laws.Push > laws.Friction ? RamMode.Out : RamMode.Stuck;
    }
}
