using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets;

/// <summary>One full run, as recorded. A void run stays on the paper, with its cause.</summary>
/// <param name="Number">Its place in the series, from 1, void ones counted too.</param>
/// <param name="VoidCause">Why it does not count, recorded apart from its value; null for a valid run.</param>
public sealed record RunLine(int Number, Pressure Peak, DateTimeOffset? At = null, string? VoidCause = null);

/// <summary>What measured, and how it is known to be right.</summary>
public sealed record DeviceLine
{
    /// <summary>Kind in words: force cell, port gauge.</summary>
    public required string Kind { get; init; }

    /// <summary>The house's own number of it.</summary>
    public required string Id { get; init; }
    public string? Serial { get; init; }

    /// <summary>Range in words and units.</summary>
    public string? Range { get; init; }

    /// <summary>Response and sampling in words and units.</summary>
    public string? Response { get; init; }

    public DateOnly? Calibrated { get; init; }
    public DateOnly? CalibrationDue { get; init; }

    /// <summary>Number of the calibration certificate and who gave it.</summary>
    public string? Certificate { get; init; }
}

/// <summary>What a proof report is filled from.</summary>
public sealed record ProofReportInput
{
    public required string Number { get; init; }
    public required HouseHeader House { get; init; }
    public required JobHeader Job { get; init; }
    public required Limits Limits { get; init; }
    public required ProofSeries Series { get; init; }
    public required Verdict Verdict { get; init; }

    /// <summary>Every run of the series in the order taken, void ones too.</summary>
    public required ImmutableArray<RunLine> Runs { get; init; }

    /// <summary>Runs taken before any work; they are told, not judged.</summary>
    public ImmutableArray<RunLine> AsFound { get; init; } = [];

    /// <summary>Why there is no as-found figure, where there is none: the tool would not run.</summary>
    public string? NoAsFound { get; init; }

    public required DeviceLine Device { get; init; }

    /// <summary>What the reference may be off, as it stood when the series was opened; null in series of an earlier program.</summary>
    public ReferenceBudget? Reference { get; init; }

    /// <summary>The force at the jaws, where the model knows its ram.</summary>
    public ProofForce? OutputForce { get; init; }

    /// <summary>Risks by JCGM 106, where the runs have a mean and a scatter.</summary>
    public ProofRisk? Risk { get; init; }

    /// <summary>How it was measured, in a sentence or two.</summary>
    public required string Method { get; init; }

    /// <summary>Against what the tool ran: dies closed, a connector.</summary>
    public required string Load { get; init; }

    public Temperature? BenchTemperature { get; init; }
    public Temperature? OilTemperatureFirst { get; init; }
    public Temperature? OilTemperatureLast { get; init; }

    /// <summary>What was done to the tool between as-found and as-left, a line each.</summary>
    public ImmutableArray<string> WorkDone { get; init; } = [];

    public required DateOnly Tested { get; init; }
    public required Signer TestedBy { get; init; }
    public required DateTimeOffset Issued { get; init; }
    public required Signer ReleasedBy { get; init; }
    public required LedgerMark Ledger { get; init; }

    /// <summary>Number of the report that this one takes the place of.</summary>
    public string? Replaces { get; init; }

    /// <summary>Only where the interval was agreed with the customer.</summary>
    public DateOnly? NextDueAsAgreed { get; init; }

    /// <summary>SHA-256 of the service model's file, hexadecimal.</summary>
    public string? ModelFingerprint { get; init; }

    /// <summary>Anything else the reader must know, a line each.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];
}
