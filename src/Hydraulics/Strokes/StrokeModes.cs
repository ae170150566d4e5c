namespace Ramwright.Hydraulics.Strokes;

internal enum DriveMode
{
    /// <summary>At rest, trigger not pulled.</summary>
    Standing,

    /// <summary>The electronics hold the current at their limit.</summary>
    Limited,

    /// <summary>Current by voltage, speed and resistance.</summary>
    Free,

    /// <summary>Trigger pulled, but the load is more than the motor can turn.</summary>
    Stalled,

    /// <summary>Switched off and braked through its own winding.</summary>
    Braking,
}

internal enum RamMode { Home, Out, Stuck, Back }

internal enum ConnectorMode
{
    None,
    Untouched,
    Pressed,

    /// <summary>Springing back and forth without further pressing.</summary>
    Elastic,

    /// <summary>The ram has left it.</summary>
    LetGo,
}

/// <summary>Which laws hold at present. Each change of one is an event.</summary>
internal struct StrokeModes
{
    public DriveMode Drive;
    public RamMode Ram;
    public ConnectorMode Connector;

    /// <summary>How far the connector has been pressed.</summary>
    public double ConnectorPeakMetres;

    public bool DiesClosed, ReliefOpen, Weeping;

    /// <summary>The poppet has left its seat, a moment after the opening pressure was reached.</summary>
    public bool ReliefLifts;

    /// <summary>The reservoir has nothing more to give than what comes back to it.</summary>
    public bool Dry;

    /// <summary>More oil is displaced than leaks from the chamber, so the delivery check opens.</summary>
    public bool Delivering;

    /// <summary>Pressure that ends the pull before a pause; infinite when none is waited for.</summary>
    public double WatchedPascals;

    public readonly bool Turns => Drive is DriveMode.Limited or DriveMode.Free or DriveMode.Braking;

    public static StrokeModes AtRest(StrokePlan plan) => new()
    {
        Connector = plan.Load is StrokeLoad.Connector ? ConnectorMode.Untouched : ConnectorMode.None,
        Delivering = true,
        WatchedPascals = plan.PausePascals ?? double.PositiveInfinity,
    };
}
