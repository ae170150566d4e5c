using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
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
            .. seen.Select(s => new FindingRecorded(s, null, Seen: true)),
            .. notSeen.Select(s => new FindingRecorded(s, null, Seen: false)),
        ];
        if (!string.IsNullOrWhiteSpace(text))
            events.Add(new FindingRecorded(null, text.Trim(), Seen: true));
        return events.Count == 0
            ? Refused("text", "Nothing was ticked or written.", "Say of one thing at least whether it is to be seen, or go on to what to work on.")
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

    private Task<ActAnswer> AtFind(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Find, act);

    private static Task<ActAnswer> Refused(string field, string what, string mend) => Task.FromResult(ActAnswer.Refuse(field, what, mend));
}
