using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Stations;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.App.House.Jobs;

/// <summary>The whole record of a job: every entry, its papers, and corrections, which add and never erase.</summary>
public sealed class JobPage(Bench bench) : BenchPage(bench)
{
    public JobState Job { get; private set; } = null!;

    public ShelvedModel? Shelved { get; private set; }

    public string? Why { get; private set; }

    public override bool NeedsPerson => false;

    public ImmutableArray<Entry<ReportIssued>> Papers => [.. Job.Reports];

    /// <summary>Entries that somebody may still take back by hand: notes, findings and measurements, not what other acts stand on.</summary>
    public bool MayCorrect(Entry<JobEvent> entry) => Job.IsOpen && !Job.Corrected.Contains(entry.Number)
        && entry.What is FindingRecorded or MeasurementRecorded or CheckMade or StrokeRecorded or NoteWritten or AsFoundRead;

    public override Sheet Sheet => new()
    {
        Title = Job.End is { } end ? $"{Job.Id}: {EventWords.EndWord(end.What.End)}" : Job.Id.Value,
        Eyebrow = $"The whole record · {Job.History.Count} entries",
        Place = "rack",
        Route = Shelved is null ? null : StationOrder.Draw(Job, Shelved.Level, seen: null),
        Wide = true,
        Counter = true,
        Block =
        [
            new("Tool", Shelved?.Model.Tool.Name ?? Job.Opened!.What.ModelId, "no. " + Job.Opened!.What.Tool, $"/tools/{Uri.EscapeDataString(Job.Opened.What.Tool.Value)}"),
            new("Job", Job.Id.Value), new("For", House.NameOf(Job.Opened.What.Customer)), PersonField, new("Ledger", $"no. {Job.Version}", Less: true), new("Sheet", "record", Less: true),
        ],
    };

    public Task<IActionResult> OnPostAsync(long entry, string? why)
    {
        Why = why;
        return TakeAsync(
            async signature =>
            {
                if (string.IsNullOrWhiteSpace(why))
                    return ActAnswer.Refuse($"why-{entry}", "Say why the entry does not count.");
                return Job.History.Find(e => e.Number.Value == entry) is { } asked && MayCorrect(asked)
                    ? ActAnswer.Of(await Bench.Ledger.AppendOnceAsync(signature.Token, signature.By, Job.Id, seen: null, new EntryCorrected(asked.Number, why.Trim())))
                    : ActAnswer.Refuse("", $"Entry {entry} is none that can be corrected here.");
            },
            _ => $"/jobs/{Job.Id}");
    }

    protected override async Task<IActionResult?> PrepareAsync()
    {
        if (!JobId.TryParse(RouteData.Values["job"] as string, out var id) || await Bench.Ledger.ReadAsync(id, HttpContext.RequestAborted) is not { Opened: not null } job)
            return NotFound();
        (Job, Shelved) = (job, Bench.Models.Find(job.Opened.What.ModelId));
        return null;
    }
}
