using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Tests.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Jobs;

/// <summary>The words of a script that are events.</summary>
internal static class JobScriptEvents
{
    private static readonly InstrumentId Gauge = InstrumentId.Parse("PG-1");
    private static readonly Money Nothing = Money.Zero("EUR");

    public static JobEvent Read(JobState state, string line)
    {
        var words = line.Split(' ', 2);
        var rest = words.Length > 1 ? words[1] : "";
        return words[0] switch
        {
            "open" => LedgerBench.Opening(),
            "station" => Station(rest),
            "safe" => new StateSigned(new(rest)),
            "see" => new FindingRecorded(new SymptomId(rest), null, Seen: true),
            "plan" => new StripPlanned([], [], StripPlan(rest)),
            "step" => new StripStepSigned(JobScript.Int(rest) - 1, state.Strip?.Plan.Steps.ElementAtOrDefault(JobScript.Int(rest) - 1)?.Node ?? new("none"), null, null),
            "inspect" => new InspectionAnswered(new("look"), new(rest.Split(' ')[0]), rest.EndsWith("good", StringComparison.Ordinal), null, null),
            "quote" => new QuoteMade(rest.Length > 0 ? rest : state.NextQuoteNumber(), SampleQuote.Made(), null, new(2026, 4, 1)),
            "answer" => new QuoteAnswered(rest == "yes", "Mr Reed", null, null),
            "rebuild" => new RebuildPlanned([.. state.Done], RebuildPlan(rest)),
            "fit" => new RebuildStepSigned(JobScript.Int(rest) - 1, null, null, [], null),
            "peak" => new SettingPeakRead(Bar(rest), Gauge),
            "turn" => new ReliefTurned(Angle.FromTurns(Twelfths(rest) / 12.0)),
            "lock" => new ReliefLocked(),
            "series" => Series(state, rest),
            "run" => new RunTaken(state.OpenSeries?.Number ?? 1, state.OpenSeries?.NextRun ?? 1, Bar(rest), Gauge),
            "run-on" => new RunTaken(state.OpenSeries?.Number ?? 1, state.OpenSeries?.NextRun ?? 1, Bar("700"), InstrumentId.Parse(rest)),
            "void" => new RunVoided(state.OpenSeries?.Number ?? 1, JobScript.Int(rest.Split(' ')[0]), rest.Contains(' ', StringComparison.Ordinal) ? rest[2..] : ""),
            "close" => Close(state, rest),
            "quarantine" => new ToolQuarantined(Bar(rest), Pressure.FromBar(735)),
            "lift" => new QuarantineLifted("frame inspected by dye"),
            "paper" => new ReportIssued(Enum.Parse<ReportKind>(rest.Split(' ')[0]), rest.Contains(' ', StringComparison.Ordinal) ? rest.Split(' ')[1] : state.NextReportNumber(Enum.Parse<ReportKind>(rest)), new('b', 64), Records.Store.LedgerHead.Empty),
            "note" => new NoteWritten(state.Station, rest),
            "end" => new JobEnded(Enum.Parse<JobEnd>(rest), "so it is"),
            "correct" => new EntryCorrected(new(JobScript.Int(rest.Split(' ')[0])), rest.Contains(' ', StringComparison.Ordinal) ? rest[(rest.IndexOf(' ', StringComparison.Ordinal) + 1)..] : ""),
            _ => throw new ArgumentException($"The script knows no '{words[0]}'.", nameof(line)),
        };
    }

    private static StationReached Station(string rest)
    {
        var because = rest.Split(" because ");
        return new(Enum.Parse<Station>(because[0]), because.Length > 1 ? because[1] : null);
    }

    /// <summary>Nodes in order; <c>a+b</c>: freeing a makes b due for renewal.</summary>
    public static StripPlan StripPlan(string nodes) => new()
    {
        Steps = [.. nodes.Split(' ').Select(n => n.Split('+')).Select(n => new StripStep
        {
            Node = new(n[0]),
            Operation = "Take off the " + n[0],
            Time = TimeSpan.FromMinutes(1),
            ChangeTime = TimeSpan.Zero,
            Cautions = [],
            Why = new StepReason.Target(),
            Renewals = [.. n.Skip(1).Select(r => new Renewal(new(r), 1, RenewalCause.Disturbed, new(n[0])))],
            Inspections = [],
        })],
        Renewals = [],
        Inspections = [],
        Tools = [],
        States = [],
        OilLost = Volume.FromMillilitres(0),
        LikelyTime = TimeSpan.FromMinutes(3),
        SafeTime = TimeSpan.FromMinutes(4),
        Cost = Nothing,
        CostParts = new(Nothing, Nothing, Nothing),
        ProvenOptimal = true,
        Gap = Nothing,
        StatesSearched = 1,
    };

    /// <summary>Parts in order; <c>!</c> behind one that goes in new, <c>a+b</c> for a unit of two.</summary>
    public static RebuildPlan RebuildPlan(string parts) => new()
    {
        Steps = [.. parts.Split(' ').Select(p => new RebuildStep
        {
            Kind = p.Contains('+', StringComparison.Ordinal) ? RebuildKind.FitUnit : RebuildKind.FitPart,
            Node = p.Contains('+', StringComparison.Ordinal) ? null : new NodeId(p.TrimEnd('!')),
            Parts = [.. p.Split('+').Select(x => new NodeId(x.TrimEnd('!')))],
            NewParts = [.. p.Split('+').Where(x => x.EndsWith('!')).Select(x => new NodeId(x.TrimEnd('!')))],
            Operation = "Fit " + p,
            Time = TimeSpan.FromMinutes(1),
            ChangeTime = TimeSpan.Zero,
        })],
        Tools = [],
        LikelyTime = TimeSpan.FromMinutes(3),
        SafeTime = TimeSpan.FromMinutes(4),
        Labour = Nothing,
        OilFilled = Volume.FromMillilitres(0),
    };

    private static SeriesOpened Series(JobState state, string runs) => new()
    {
        Series = state.NextSeries,
        PlannedRuns = JobScript.Int(runs),
        Limits = new(Bar("679"), Bar("721")),
        Maximum = Bar("735"),
        Device = Gauge,
        Systematic = SystematicUncertainty.Symmetric(Bar("4")),
        Coverage = 0.95,
        Confidence = 0.95,
        Rule = DecisionRule.OneSidedPerLimit,
    };

    /// <summary>Closed with a verdict given in the script, <c>conforms</c>, <c>does-not-conform</c> or <c>undecided</c>; a number behind it says on how many runs.</summary>
    private static SeriesClosed Close(JobState state, string rest)
    {
        var words = rest.Split(' ');
        var conformity = words[0] switch { "conforms" => Conformity.Conforms, "does-not-conform" => Conformity.DoesNotConform, _ => Conformity.Undecided };
        var runs = words.Length > 1 ? JobScript.Int(words[1]) : state.OpenSeries?.Peaks.Length ?? 0;
        return new(state.OpenSeries?.Number ?? 1, new Verdict { Conformity = conformity, Reasons = [], Runs = runs, PlannedRuns = state.OpenSeries?.Opened.What.PlannedRuns ?? 0, GuardLow = Bar("683"), GuardHigh = Bar("717") });
    }

    private static Pressure Bar(string bar) => Pressure.FromBar(double.Parse(bar, CultureInfo.InvariantCulture));

    private static int Twelfths(string text) => JobScript.Int(text.Split('/')[0]);
}
