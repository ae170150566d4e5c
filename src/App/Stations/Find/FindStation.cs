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
    public async Task<ActAnswer> RecordSeenAsync(Signature signature, JobId id, IReadOnlyList<SymptomId> seen, IReadOnlyList<SymptomId> notSeen, string? text)
    {
        List<JobEvent> events =
        [
            .. seen.Select(s => new FindingRecorded(s, null, Seen: true)),
            .. notSeen.Select(s => new FindingRecorded(s, null, Seen: false)),
        ];
        if (!string.IsNullOrWhiteSpace(text))
            events.Add(new FindingRecorded(null, text.Trim(), Seen: true));
        return events.Count == 0
            ? ActAnswer.Refuse("text", "Nothing was ticked or written.", "Say of one thing at least whether it is to be seen, or go on to what to work on.")
            : ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen, events));
    }

    /// <summary>A figure measured with simple means.</summary>
    public async Task<ActAnswer> RecordMeasurementAsync(Signature signature, JobId id, string? what, MeasuredValue value, InstrumentId? instrument, string? note) =>
        string.IsNullOrWhiteSpace(what)
            ? ActAnswer.Refuse("what", "Say what was measured.", "Such as: pressure left after one minute.")
            : ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen, new MeasurementRecorded(what.Trim(), value, instrument, note)));

    /// <summary>Full runs as found, before anything is adjusted: a report must be able to say them.</summary>
    public async Task<ActAnswer> RecordAsFoundAsync(Signature signature, JobId id, IReadOnlyList<Pressure> peaks, InstrumentId? instrument)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened } || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        if (peaks.Count == 0)
            return ActAnswer.Refuse("peaks", "No run was written down.");
        List<JobEvent> events = [new AsFoundRead([.. peaks], instrument, null)];
        var highest = peaks.MaxBy(p => p.Pascals);
        if (highest > shelved.Model.Limits.Maximum)
            events.Add(new ToolQuarantined(highest, shelved.Model.Limits.Maximum));
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen, events));
    }

    /// <summary>Decides what to free; nothing at all means that the tool is only set and proved.</summary>
    public async Task<ActAnswer> DecideAsync(Signature signature, JobId id, IReadOnlyList<NodeId> parts, IReadOnlyList<RemedyId> remedies, string? why)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        var model = shelved.Model;
        ImmutableArray<Remedy> chosen = [.. model.Remedies.Where(r => remedies.Contains(r.Id))];
        ImmutableArray<NodeId> targets = [.. parts.Concat(chosen.SelectMany(r => r.Frees.Concat(r.Renews))).Where(p => model.FindPart(p) is not null).Distinct()];
        var reason = string.Join("; ", chosen.Select(r => r.Name).Append(why?.Trim() ?? "").Where(w => w.Length > 0));
        if (reason.Length == 0)
            return ActAnswer.Refuse("why", "Say what is wrong, or why nothing is.", "One line for the report, such as: seal of the ram leaks.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen,
            new TargetsChosen(targets, reason),
            new StationReached(StationOrder.After(shelved.Level, !targets.IsEmpty, Station.Find), null)));
    }
}
