using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;

namespace Ramwright.App.Web.Pages;

/// <summary>What happened, in a few words without a figure: for the history of a job and for what others signed meanwhile.</summary>
public static class EventWords
{
    public static string Of(JobEvent what) => what switch
    {
        JobOpened => "taken in",
        StateSigned x => $"made safe: {x.State.Value.Replace('-', ' ')}",
        FindingRecorded { Seen: true } x => $"seen: {x.Text ?? x.Symptom?.Value.Replace('-', ' ')}",
        FindingRecorded x => $"looked for, not seen: {x.Text ?? x.Symptom?.Value.Replace('-', ' ')}",
        MeasurementRecorded x => $"measured: {x.What}",
        CheckMade x => $"checked: {x.Check.Value.Replace('-', ' ')}, {x.Outcome.Replace('-', ' ')}",
        StrokeRecorded x => $"recording read: {x.FileName}",
        AsFoundRead x => $"as found: {x.Peaks.Length} {(x.Peaks.Length == 1 ? "run" : "runs")} read",
        TargetsChosen { Parts.IsEmpty: true } => "decided: nothing to strip",
        TargetsChosen x => $"decided what to free: {string.Join(", ", x.Parts.Select(p => p.Value.Replace('-', ' ')))}",
        StripPlanned x => $"strip plan taken on, {x.Plan.Steps.Length} steps",
        QuoteMade x => $"price named, quote {x.Number}",
        QuoteAnswered { Accepted: true } x => $"{x.Who} said yes",
        QuoteAnswered x => $"{x.Who} said no",
        StripStepSigned x => $"off: {x.Node.Value.Replace('-', ' ')}",
        InspectionAnswered { Good: true } x => $"inspected, may be used again: {x.Part.Value.Replace('-', ' ')}",
        InspectionAnswered x => $"inspected, to be renewed: {x.Part.Value.Replace('-', ' ')}",
        RebuildPlanned x => $"rebuild plan taken on, {x.Plan.Steps.Length} steps",
        RebuildStepSigned x => $"rebuild step {x.Step + 1} done",
        NoteWritten x => $"note: {x.Text}",
        SettingPeakRead => "setting run read",
        ReliefTurned x => x.Turn.Si >= 0 ? "relief screw turned clockwise" : "relief screw turned anticlockwise",
        ReliefLocked => "relief screw locked",
        SeriesOpened x => $"proof series {x.Series} opened",
        RunTaken x => $"run {x.Run} taken",
        SensorCompared x => $"the tool's sensor compared with {x.Reference}",
        FrictionLooped x => $"loaded up and down {x.Loops.Length} times under {x.Cell}",
        RunVoided x => $"run {x.Run} void: {x.Cause}",
        SeriesClosed x => $"series {x.Series} closed: {AnswerMark.Word(x.Verdict.Conformity)}",
        ToolQuarantined => "quarantined: above the maximum",
        QuarantineLifted => "quarantine lifted after inspection",
        ReportIssued x => $"paper {x.Number} made",
        StationReached { Why: { } why } x => $"to {x.Station}: {why}",
        StationReached x => $"to {x.Station}",
        JobEnded x => $"ended: {EndWord(x.End)}",
        EntryCorrected x => $"entry {x.Entry} corrected: {x.Why}",
        _ => what.GetType().Name,
    };

    public static string KindWord(ReportKind kind) => kind switch
    {
        ReportKind.WorkSheet => "work sheet",
        ReportKind.Quote => "quote",
        ReportKind.ServiceRecord => "service record",
        ReportKind.ProofReport => "proof report",
        ReportKind.Label => "label",
        ReportKind.SensorCheck => "sensor check",
        _ => "do-not-use tag",
    };

    public static string EndWord(JobEnd end) => end switch
    {
        JobEnd.Released => "released",
        JobEnd.ReturnedUnrepaired => "returned unrepaired",
        JobEnd.Retired => "retired",
        JobEnd.NotProven => "not proven",
        _ => "sent out",
    };
}
