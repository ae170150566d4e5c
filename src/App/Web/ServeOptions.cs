namespace Ramwright.App.Web;

/// <summary>How the web bench is served.</summary>
public sealed record ServeOptions
{
    /// <summary>The port listened on; 0 takes any free one.</summary>
    public int Port { get; init; } = 8085;

    /// <summary>The address listened on. Loopback unless told otherwise: other tablets then reach the bench only when the house says so.</summary>
    public string Address { get; init; } = "127.0.0.1";

    /// <summary>Where database, signing keys and papers of the house lie.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Seeds the made-up Saltmarsh Tool Service when the house is still empty.</summary>
    public bool Demo { get; init; }

    /// <summary>The clock; tests put their own.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>How many times faster than life the simulated device runs; above zero, infinity for no waiting.</summary>
    public double DevicePace { get; init; } = 20;
}
