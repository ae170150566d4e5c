using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Events;

/// <summary>A tool came in. Always the first entry of its job.</summary>
public sealed record JobOpened : JobEvent
{
    /// <summary>The service model by its id, and the SHA-256 of its file as it stood.</summary>
    public required string ModelId { get; init; }

    public required string ModelFingerprint { get; init; }
    public required ToolSerial Tool { get; init; }
    public required CustomerId Customer { get; init; }

    /// <summary>What the customer says is wrong, in the customer's words; empty when merely due.</summary>
    public required string Complaint { get; init; }

    /// <summary>What it looked like when it came in.</summary>
    public required string ConditionOnReceipt { get; init; }

    /// <summary>The day on which it is promised back.</summary>
    public DateOnly? Promised { get; init; }

    public LotId? Lot { get; init; }

    /// <summary>The customer's own order or reference number.</summary>
    public string? CustomerReference { get; init; }
}

/// <summary>A state that makes the tool safe was reached and signed: battery out, pressure released.</summary>
public sealed record StateSigned(NodeId State) : JobEvent;

/// <summary>Something was seen, heard or felt, or looked for and not seen: a symptom of the model, or free text.</summary>
public sealed record FindingRecorded(SymptomId? Symptom, string? Text, bool Seen) : JobEvent;

/// <summary>Something was measured outside a setting or a proof.</summary>
/// <param name="What">What was measured, in words: "pressure held after one minute".</param>
public sealed record MeasurementRecorded(string What, MeasuredValue Value, InstrumentId? Instrument, string? Note) : JobEvent;

/// <summary>Full runs before anything was adjusted.</summary>
/// <param name="Peaks">In the order taken; one or more.</param>
public sealed record AsFoundRead(ImmutableArray<Pressure> Peaks, InstrumentId? Instrument, string? Note) : JobEvent;
