using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Events;

/// <summary>A full run while setting, with its peak. Never part of a proof.</summary>
/// <param name="Peak">What counts: the reading, corrected where the instrument's calibration line corrects it.</param>
public sealed record SettingPeakRead(Pressure Peak, InstrumentId? Instrument) : JobEvent
{
    /// <summary>What the instrument showed, where that was corrected.</summary>
    public Pressure? Shown { get; init; }
}

/// <summary>The relief screw was turned; clockwise is positive.</summary>
public sealed record ReliefTurned(Angle Turn) : JobEvent;

/// <summary>The relief screw was locked.</summary>
public sealed record ReliefLocked : JobEvent;

/// <summary>A proof series was opened: all that is fixed before its first run.</summary>
public sealed record SeriesOpened : JobEvent
{
    /// <summary>1, 2, 3 ... within the job.</summary>
    public required int Series { get; init; }

    public required int PlannedRuns { get; init; }
    public required PressureWindow Limits { get; init; }

    /// <summary>Above this the tool is quarantined.</summary>
    public required Pressure Maximum { get; init; }

    public required InstrumentId Device { get; init; }
    public required SystematicUncertainty Systematic { get; init; }

    /// <summary>Above 0 and below 1.</summary>
    public required double Coverage { get; init; }

    /// <summary>Above 0 and below 1.</summary>
    public required double Confidence { get; init; }

    public required DecisionRule Rule { get; init; }

    /// <summary>So many more runs are made if and only if the planned ones leave the series undecided; null: none. Not together with <see cref="Earlier"/>.</summary>
    public int? MoreRuns { get; init; }

    /// <summary>The earlier series of the model that moderate this one's scatter, as they stood when it was opened; null: its own scatter counts.</summary>
    public ImmutableArray<EarlierScatter>? Earlier { get; init; }

    /// <summary>What the reference may be off and why, as it stood when the series was opened; null in series of an earlier program.</summary>
    public ReferenceBudget? Reference { get; init; }

    /// <summary>Smallest step of the device's readings; null when not known.</summary>
    public Pressure? Resolution { get; init; }

    /// <summary>What the tool pressed against: "die-close stop", "connector 95 mm² Cu".</summary>
    public string? Load { get; init; }

    /// <summary>Temperature of the room.</summary>
    public Temperature? Room { get; init; }

    /// <summary>Temperature of the oil.</summary>
    public Temperature? Oil { get; init; }
}

/// <summary>A full run of a proof series.</summary>
/// <param name="Run">1, 2, 3 ... within the series; a void run keeps its number.</param>
/// <param name="Peak">What counts: the reading, corrected where the series was opened with a correction.</param>
/// <param name="Device">What read it; for the tool's own memory the instrument that it was compared with.</param>
public sealed record RunTaken(int Series, int Run, Pressure Peak, InstrumentId Device) : JobEvent
{
    /// <summary>What the device showed, where that was corrected.</summary>
    public Pressure? Shown { get; init; }

    /// <summary>How the reading came; null in runs of an earlier program.</summary>
    public RunSource? Source { get; init; }
}

/// <summary>How the reading of a run came into the ledger.</summary>
public enum RunSource { Written, File, Device, Memory }

/// <summary>The tool's own pressure sensor was compared with a reference, at held pressures.</summary>
/// <param name="Reference">The instrument that it was compared with.</param>
/// <param name="ReferenceStandard">Combined standard uncertainty of that instrument, as it stood.</param>
/// <param name="Allowed">The most that the sensor may be off.</param>
/// <param name="Resolution">Smallest step that the tool shows.</param>
/// <param name="Points">Every comparison, in pascals.</param>
public sealed record SensorCompared(InstrumentId Reference, Pressure ReferenceStandard, Pressure Allowed, Pressure? Resolution, ImmutableArray<SensorPoint> Points) : JobEvent
{
    /// <summary>What the comparison shows; always the same for the same entry.</summary>
    public SensorAnswer Examine() => SensorCheck.Examine(Points, Task);

    /// <summary>What was asked of the sensor.</summary>
    public SensorTask Task => new() { AllowedPascals = Allowed.Pascals, ReferenceStandardPascals = ReferenceStandard.Pascals, ResolutionPascals = Resolution?.Pascals ?? 0 };
}

/// <summary>The ram was loaded up and down at held pressures: the force cell shows its friction.</summary>
public sealed record FrictionLooped(InstrumentId Cell, ImmutableArray<ForcePair> Loops) : JobEvent
{
    /// <summary>What the loops show; always the same for the same entry.</summary>
    public FrictionLoop Examine() => FrictionLoop.Of(Loops);
}

/// <summary>A run was void for a cause that is recorded apart from its value.</summary>
public sealed record RunVoided(int Series, int Run, string Cause) : JobEvent;

/// <summary>A proof series was closed, with the verdict on it.</summary>
public sealed record SeriesClosed(int Series, Verdict Verdict) : JobEvent;

/// <summary>A run went above the maximum: the tool is not used until its frame has been inspected.</summary>
public sealed record ToolQuarantined(Pressure Peak, Pressure Maximum) : JobEvent;

/// <summary>The frame was inspected and the tool may be worked on again; the quarantine stays on record.</summary>
public sealed record QuarantineLifted(string Inspection) : JobEvent;
