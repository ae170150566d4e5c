using System.Collections.Immutable;
using Ramwright.App.Stations.Find.Recordings;
using Ramwright.App.Web.Pages;
using Ramwright.Diagnosis.Recordings;
using Ramwright.Hydraulics.Identification;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What happens at Find: what is seen and measured is written down, then it is decided what to work on.</summary>
public sealed class FindStation(Bench bench)
{
    /// <summary>Symptoms of the model looked for, each seen or not, and one in free words.</summary>
    public Task<ActAnswer> RecordSeenAsync(Signature signature, JobId id, IReadOnlyList<SymptomId> seen, IReadOnlyList<SymptomId> notSeen, string? text) => AtFind(signature, id, at =>
    {
        List<JobEvent> events =
        [
            .. seen.Where(s => Last(at, s) != true).Select(s => new FindingRecorded(s, null, Seen: true)),
            .. notSeen.Where(s => Last(at, s) != false).Select(s => new FindingRecorded(s, null, Seen: false)),
        ];
        if (!string.IsNullOrWhiteSpace(text))
            events.Add(new FindingRecorded(null, text.Trim(), Seen: true));
        return events.Count == 0
            ? Refused("text", "Nothing new was ticked or written.", "Say of one thing at least whether it is to be seen, or go on to what to work on.")
            : at.WriteAsync(signature, events);
    });

    /// <summary>A figure measured with simple means.</summary>
    public Task<ActAnswer> RecordMeasurementAsync(Signature signature, JobId id, string? what, MeasuredValue value, InstrumentId? instrument, string? note) => AtFind(signature, id, at => string.IsNullOrWhiteSpace(what)
        ? Refused("what", "Say what was measured.", "Such as: pressure left after one minute.")
        : at.WriteAsync(signature, new MeasurementRecorded(what.Trim(), value, instrument, note)));

    /// <summary>Full runs as found, before anything is adjusted: a report must be able to say them.</summary>
    public Task<ActAnswer> RecordAsFoundAsync(Signature signature, JobId id, IReadOnlyList<Pressure> peaks, InstrumentId? instrument) => AtFind(signature, id, at =>
    {
        if (peaks.Count == 0)
            return Refused("peaks", "No run was written down.", "Write the peak of a run, or go on without one.");
        List<JobEvent> events = [new AsFoundRead([.. peaks], instrument, null)];
        var highest = peaks.MaxBy(p => p.Pascals);
        if (highest > at.Model.Limits.Maximum)
            events.Add(new ToolQuarantined(highest, at.Model.Limits.Maximum));
        return at.WriteAsync(signature, events);
    });

    /// <summary>Decides what to free; nothing at all means that the tool is only set and proved.</summary>
    public Task<ActAnswer> DecideAsync(Signature signature, JobId id, IReadOnlyList<NodeId> parts, IReadOnlyList<RemedyId> remedies, string? why) => AtFind(signature, id, at =>
    {
        var model = at.Model;
        ImmutableArray<Remedy> chosen = [.. model.Remedies.Where(r => remedies.Contains(r.Id))];
        ImmutableArray<NodeId> targets = [.. parts.Concat(chosen.SelectMany(r => r.Frees.Concat(r.Renews))).Where(p => model.FindPart(p) is not null).Distinct()];
        var reason = string.Join("; ", chosen.Select(r => r.Name).Append(why?.Trim() ?? "").Where(w => w.Length > 0));
        return reason.Length == 0
            ? Refused("why", "Say what is wrong, or why nothing is.", "One line for the report, such as: seal of the ram leaks.")
            : at.WriteAsync(signature, new TargetsChosen(targets, reason), new StationReached(StationOrder.After(at.Shelved.Level, !targets.IsEmpty, Station.Find), null));
    });

    /// <summary>The outcome of a check; a check made again counts with its last outcome.</summary>
    public Task<ActAnswer> RecordCheckAsync(Signature signature, JobId id, CheckId check, string? outcome, string? note) => AtFind(signature, id, at =>
        at.Model.Checks.FirstOrDefault(c => c.Id == check) is { } known && known.Outcomes.Any(o => o.Id == outcome)
            ? at.WriteAsync(signature, new CheckMade(check, outcome!, string.IsNullOrWhiteSpace(note) ? null : note.Trim()))
            : Refused("outcome", "Say how the check came out.", "One of the outcomes is pressed."));

    /// <summary>The readings of a quick measurement, all at once.</summary>
    public Task<ActAnswer> RecordReadingsAsync(Signature signature, JobId id, IReadOnlyList<MeasurementRecorded> readings) => AtFind(signature, id, at => at.WriteAsync(signature, readings));

    /// <summary>What a recording says, as one entry with the hash of its file.</summary>
    public Task<ActAnswer> RecordStrokeAsync(Signature signature, JobId id, string fileName, string sha256, SaidOfRecording said, StrokeRead read) => AtFind(signature, id, at =>
    {
        var told = read.Answer as IdentificationAnswer.Told;
        var evidence = told is null ? null : RecordedStroke.Evidence(at.Model, told);
        return at.WriteAsync(signature, new StrokeRecorded(fileName.Length > 120 ? fileName[..120] : fileName, sha256, said.Response)
        {
            PressureColumn = said.Column,
            PressureScale = said.Scale,
            Figures = told is null ? [] : [.. told.Parameters.Where(p => p.Identified && double.IsFinite(p.Low) && double.IsFinite(p.High)).Select(p => new RecordedFigure(p.Name, p.Value, p.Low, p.High, p.Unit == "fraction" ? "" : p.Unit))],
            Faults = told is null ? [] : [.. evidence!.Factors.Select(f => new RecordedFault(f.Key, Probability(told, f.Key), f.Value)).Concat(Unweighed(told, evidence)).OrderByDescending(f => f.Probability).ThenBy(f => f.Fault.Value, StringComparer.Ordinal)],
            Shows = evidence is null ? [] : [.. evidence.Shows],
            Measures = evidence is null ? [] : [.. evidence.Measures],
        });
    });

    private static double Probability(IdentificationAnswer.Told told, ServiceModels.Model.FaultId fault) => told.Faults.FirstOrDefault(f => f.Id == fault.Value)?.Probability ?? 0;

    /// <summary>Faults that the recording names and the model does not know: kept, weighed as nothing.</summary>
    private static IEnumerable<RecordedFault> Unweighed(IdentificationAnswer.Told told, Ramwright.Diagnosis.Faults.RecordingEvidence evidence) =>
        told.Faults.Where(f => !evidence.Factors.ContainsKey(new(f.Id))).Select(f => new RecordedFault(new(f.Id), f.Probability, 1));

    private static bool? Last(JobAtBench at, SymptomId symptom) => at.Job.Findings.FindLast(f => f.What.Symptom == symptom)?.What.Seen;

    private Task<ActAnswer> AtFind(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Find, act);

    private static Task<ActAnswer> Refused(string field, string what, string mend) => Task.FromResult(ActAnswer.Refuse(field, what, mend));
}
