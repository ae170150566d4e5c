using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Arrive;

/// <summary>A tool as it is taken in, read and sound.</summary>
public sealed record Intake
{
    public required ToolSerial Tool { get; init; }
    public required string ModelId { get; init; }

    /// <summary>The customer's name; one that the house does not know yet is registered with the job.</summary>
    public required string Customer { get; init; }

    /// <summary>In the customer's words; empty when the tool is merely due.</summary>
    public string Complaint { get; init; } = "";

    public required string Condition { get; init; }
    public DateOnly? Promised { get; init; }
    public LotId? Lot { get; init; }
    public string? Reference { get; init; }
}
