namespace Ramwright.Hydraulics.Strokes;

/// <summary>What stands between the dies.</summary>
public abstract record StrokeLoad
{
    private StrokeLoad() { }

    /// <summary>Nothing: the dies close on each other.</summary>
    public sealed record DiesClose : StrokeLoad;

    /// <summary>A connector that is pressed: force F·(1 − exp(−(x − contact)/build-up)), springing back as stiffly as the frame.</summary>
    /// <param name="PlateauNewtons">The force F that it comes to, above 0.</param>
    /// <param name="ContactMetres">Ram travel at which it is touched.</param>
    /// <param name="BuildUpMetres">Length of the build-up, above 0.</param>
    public sealed record Connector(double PlateauNewtons, double ContactMetres, double BuildUpMetres) : StrokeLoad;
}

/// <summary>How the tool is used in a simulated stroke.</summary>
public sealed record StrokePlan
{
    public StrokeLoad Load { get; init; } = new StrokeLoad.DiesClose();

    /// <summary>Gauge pressure at which the trigger is let go for a pause; null for a stroke without one.</summary>
    public double? PausePascals { get; init; }

    /// <summary>Length of the pause.</summary>
    public double PauseSeconds { get; init; } = 5;

    /// <summary>Standstill before the trigger is pulled.</summary>
    public double LeadSeconds { get; init; } = 0.3;

    /// <summary>The operator lets go after pulling for this long in all, and the simulation ends soon after.</summary>
    public double GiveUpSeconds { get; init; } = 15;

    /// <summary>Samples per second in the recording, 10 to 100,000; null for none.</summary>
    public double? SamplesPerSecond { get; init; }
}
