using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Jobs;

/// <summary>
/// A job as it stands: everything here follows from its entries, in order, and from nothing else.
/// An entry that was corrected no longer counts, as if it had not been; it stays in <see cref="History"/>.
/// </summary>
public sealed record JobState
{
    public required JobId Id { get; init; }

    /// <summary>Every entry of the job, corrected ones too, in the order of the ledger.</summary>
    public ImmutableList<Entry<JobEvent>> History { get; init; } = [];

    /// <summary>Entries that no longer count.</summary>
    public ImmutableHashSet<EntryNumber> Corrected { get; init; } = [];

    /// <summary>The last entry of the job: what a writer names as the version it saw.</summary>
    public EntryNumber Version => History.Count > 0 ? History[^1].Number : EntryNumber.None;

    /// <summary>Null only before the first entry.</summary>
    public Entry<JobOpened>? Opened { get; init; }

    public Station Station { get; init; }

    /// <summary>Stations reached, with the way back and why; the first is Arrive with the opening.</summary>
    public ImmutableList<Entry<StationReached>> Route { get; init; } = [];

    /// <summary>Isolation: the states that make the tool safe, as signed.</summary>
    public ImmutableList<Entry<StateSigned>> SafeStates { get; init; } = [];

    public ImmutableList<Entry<FindingRecorded>> Findings { get; init; } = [];
    public ImmutableList<Entry<MeasurementRecorded>> Measurements { get; init; } = [];

    /// <summary>Checks made, each with its last outcome.</summary>
    public ImmutableList<Entry<CheckMade>> Checks { get; init; } = [];

    /// <summary>Recordings taken to the job; the last one counts in diagnosis.</summary>
    public ImmutableList<Entry<StrokeRecorded>> Strokes { get; init; } = [];

    public ImmutableList<Entry<AsFoundRead>> AsFound { get; init; } = [];
    public Entry<TargetsChosen>? Targets { get; init; }
    public StripState? Strip { get; init; }
    public ImmutableList<Entry<InspectionAnswered>> Inspections { get; init; } = [];
    public QuoteState? Quote { get; init; }
    public RebuildState? Rebuild { get; init; }
    public SettingState Setting { get; init; } = SettingState.AsFound;
    public ImmutableList<SeriesState> Series { get; init; } = [];

    /// <summary>The last comparison of the tool's own sensor at this visit, as long as nothing was stripped or rebuilt since; else null.</summary>
    public Entry<SensorCompared>? Comparison { get; init; }

    /// <summary>The last loading up and down at this visit, as long as nothing was stripped or rebuilt since; else null.</summary>
    public Entry<FrictionLooped>? Friction { get; init; }
    public ImmutableList<Entry<NoteWritten>> Notes { get; init; } = [];
    public ImmutableList<Entry<ReportIssued>> Reports { get; init; } = [];

    /// <summary>Parts off and states reached as it stands: strip steps and safe states add, rebuild steps take away, a full run ends every state.</summary>
    public ImmutableHashSet<NodeId> Done { get; init; } = [];

    /// <summary>Parts that a signed strip step made due for renewal and that have not gone in new yet.</summary>
    public ImmutableHashSet<NodeId> RenewalsOwed { get; init; } = [];

    /// <summary>The quarantine in force; null when there is none.</summary>
    public Entry<ToolQuarantined>? Quarantine { get; init; }

    public Entry<JobEnded>? End { get; init; }

    public bool IsOpen => Opened is not null && End is null;

    /// <summary>The series that is open; null when none is.</summary>
    public SeriesState? OpenSeries => Series.Count > 0 && Series[^1].Closed is null ? Series[^1] : null;

    /// <summary>The last closed series, as long as nothing was turned, stripped or rebuilt since; else null.</summary>
    public SeriesState? StandingProof => Series.Count > 0 && Series[^1] is { Closed: not null, Superseded: null } last ? last : null;

    /// <summary>The number that the next proof series gets.</summary>
    public int NextSeries => Series.Count + 1;

    /// <summary>The number for the next paper of a kind, such as <c>SM-0417-P2</c>.</summary>
    public string NextReportNumber(ReportKind kind)
    {
        // Corrected papers keep their number: it may be out of the house.
        var before = History.Count(e => e.What is ReportIssued r && r.Kind == kind);
        return string.Create(CultureInfo.InvariantCulture, $"{Id}-{ReportLetter(kind)}{before + 1}");
    }

    /// <summary>The number for the next quote, such as <c>SM-0417-Q1</c>.</summary>
    public string NextQuoteNumber() =>
        string.Create(CultureInfo.InvariantCulture, $"{Id}-Q{History.Count(e => e.What is QuoteMade) + 1}");

    /// <summary>The job after all its entries.</summary>
    public static JobState Fold(JobId id, IEnumerable<Entry<JobEvent>> entries) => JobFold.All(id, entries);

    /// <summary>The job after one more entry.</summary>
    public JobState After(Entry<JobEvent> entry) => JobFold.After(this, entry);

    private static string ReportLetter(ReportKind kind) => kind switch
    {
        ReportKind.WorkSheet => "W",
        ReportKind.Quote => "QP",
        ReportKind.ServiceRecord => "S",
        ReportKind.ProofReport => "P",
        ReportKind.Label => "L",
        ReportKind.DoNotUseTag => "D",
        ReportKind.SensorCheck => "C",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such paper."),
    };
}
