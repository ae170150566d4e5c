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
public sealed record MeasurementRecorded(string What, MeasuredValue Value, InstrumentId? Instrument, string? Note) : JobEvent
{
    /// <summary>Name of the reading where it is one that diagnosis weighs, such as <c>advance-time</c>.</summary>
    public string? Reading { get; init; }
}

/// <summary>A check of the model was made.</summary>
/// <param name="Outcome">Id of the outcome, as the model names it.</param>
public sealed record CheckMade(CheckId Check, string Outcome, string? Note) : JobEvent;

/// <summary>A recorded stroke was read, and this is what it says. The file lies among the house's recordings under its hash.</summary>
/// <param name="FileName">As it was called where it came from.</param>
/// <param name="Sha256">Of the file's bytes, 64 digits 0-9 and a-f.</param>
/// <param name="Response">Time constant of the sensor where it was stated.</param>
public sealed record StrokeRecorded(string FileName, string Sha256, TimeSpan? Response) : JobEvent
{
    /// <summary>Which column the pressure is, where that was stated.</summary>
    public string? PressureColumn { get; init; }

    /// <summary>How the column becomes a pressure, where that was stated: a unit, or a scale such as <c>0.5 V = 0 bar, 4.5 V = 1000 bar</c>.</summary>
    public string? PressureScale { get; init; }

    /// <summary>What the recording could settle.</summary>
    public required ImmutableArray<RecordedFigure> Figures { get; init; }

    /// <summary>Faults that it speaks about, for or against.</summary>
    public required ImmutableArray<RecordedFault> Faults { get; init; }

    /// <summary>Symptoms that it shows by itself: not counted beside it.</summary>
    public ImmutableArray<SymptomId> Shows { get; init; } = [];

    /// <summary>Measurements and checks, by id, that it repeats more exactly: not counted beside it either.</summary>
    public ImmutableArray<string> Measures { get; init; } = [];
}

/// <summary>A figure read from a recording with its 95 % interval.</summary>
/// <param name="Name">Such as <c>reliefOpening</c>.</param>
/// <param name="Unit">Unit of the three values; empty for a share.</param>
public sealed record RecordedFigure(string Name, double Value, double Low, double High, string Unit);

/// <summary>What a recording says about a fault.</summary>
/// <param name="Probability">By the recording and the fault's rate alone, 0 to 1.</param>
/// <param name="Factor">P(recording | fault) over P(recording | sound), above 0: how diagnosis weighs it.</param>
public sealed record RecordedFault(FaultId Fault, double Probability, double Factor);

/// <summary>Full runs before anything was adjusted.</summary>
/// <param name="Peaks">In the order taken; one or more.</param>
public sealed record AsFoundRead(ImmutableArray<Pressure> Peaks, InstrumentId? Instrument, string? Note) : JobEvent;
