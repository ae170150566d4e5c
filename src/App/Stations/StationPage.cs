using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations;

/// <summary>A page of a job at one of its stations: knows the job, its model, its route and its title block.</summary>
public abstract class StationPage(Bench bench, Station station) : BenchPage(bench)
{
    public Station Station { get; } = station;

    public JobState Job { get; private set; } = null!;

    public ShelvedModel Shelved { get; private set; } = null!;

    public ServiceModel Model => Shelved.Model;

    /// <summary>True where the job is at this station now: only then the page has acts.</summary>
    public bool IsHere => Job.IsOpen && Job.Station == Station;

    public override bool NeedsPerson => base.NeedsPerson && IsHere;

    /// <summary>The heading: what to do now.</summary>
    protected abstract string Title { get; }

    /// <summary>The small line above it.</summary>
    protected virtual string Eyebrow => Station.ToString();

    /// <summary>Fields of the title block that this station adds, such as the step.</summary>
    protected virtual ImmutableArray<BlockField> MoreBlock => [];

    protected virtual bool Wide => false;

    public override Sheet Sheet => new()
    {
        Title = Title,
        Eyebrow = Eyebrow,
        Place = "rack",
        Route = StationOrder.Draw(Job, Shelved.Level, Station),
        Wide = Wide,
        Block =
        [
            new("Tool", Model.Tool.Name, "no. " + Job.Opened!.What.Tool, $"/tools/{Uri.EscapeDataString(Job.Opened.What.Tool.Value)}"),
            new("Job", Job.Id.Value, Link: StationOrder.Url(Job.Id, Job.Station)),
            new("For", House.NameOf(Job.Opened.What.Customer)),
            PersonField,
            new("Station", $"{(int)Station + 1} {Station}", Less: true),
            .. MoreBlock,
            new("Ledger", $"no. {Job.Version}", Less: true),
        ],
    };

    /// <summary>The address of a station of this job.</summary>
    public string PageOf(Station station) => StationOrder.Url(Job.Id, station);

    /// <summary>Takes a post of this job: see <see cref="BenchPage.TakeAsync"/>; goes on where the job then stands.</summary>
    protected Task<IActionResult> TakeAsync(Func<Signature, Task<ActAnswer>> act, string next) => TakeAsync(act, _ => next);

    /// <summary>Signs a note; the partial <c>_Note</c> posts it.</summary>
    public Task<IActionResult> OnPostNoteAsync(string? note) =>
        TakeAsync(signature => NotePost.WriteAsync(Bench, signature, Job.Id, Station, note), Request.Path);

    protected override async Task<IActionResult?> PrepareAsync()
    {
        if (!JobId.TryParse(RouteData.Values["job"] as string, out var id) || await Bench.Ledger.ReadAsync(id, HttpContext.RequestAborted) is not { Opened: { } opened } job)
            return NotFound();
        if (Bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return StatusCode(StatusCodes.Status410Gone);
        (Job, Shelved) = (job, shelved);
        return null;
    }
}
