using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Proving.Text;
using Ramwright.Records.Events;

namespace Ramwright.App.Stations.Release;

/// <summary>The proof is looked at once more and the tool released, with its report; or the job comes to another honest end.</summary>
public sealed class ReleasePage(Bench bench, ReleaseStation station) : StationPage(bench, Station.Release)
{
    public (string What, string Mend)? WhyNot => ReleaseStation.WhyNot(Job, Person)
        ?? (Doubts.Of(Job, House, Bench.Clock.LocalTimeZone) is [var doubt, ..] ? (doubt, "Go back and measure again with an instrument that may be relied on, or choose another end.") : null);

    public AnswerMark? Answer => Job.StandingProof is { Closed: { } closed } series
        ? new AnswerMark(closed.What.Verdict.Conformity, [VerdictText.Lines(closed.What.Verdict, series.ToProofSeries(), Words.System)[0]], Large: true)
        : null;

    /// <summary>The series that the verdict stands on.</summary>
    public ProofPicture? Picture => Job.StandingProof is { Closed: { } closed } series
        ? ProofPicture.Of(series, closed.What.Verdict, Model, Words.System)
        : null;

    public static ImmutableArray<Option> OtherEnds { get; } =
    [
        new("not-proven", "not proven: returned without a proof"),
        new("returned-unrepaired", "returned unrepaired"),
        new("retired", "retired: not fit for use"),
        new("sent-out", "sent out to another house"),
    ];

    public Field EndField => new("end", "How the job ends", Job.Quote is { Answer.What.Accepted: false } ? "returned-unrepaired" : null, FieldKind.Choice)
    {
        Required = true,
        Options = OtherEnds,
        Mistake = Mistakes.At("end"),
    };

    public Field WhyField => new("why", "Why", Job.Quote is { Answer.What.Accepted: false } ? "the customer did not want the repair" : null, FieldKind.LongText)
    {
        Required = true,
        Mistake = Mistakes.At("why"),
    };

    protected override string Title => Job.End is { } end ? Sentence.Head(EventWords.EndWord(end.What.End)) : IsHere ? (WhyNot is null ? "Release the tool" : "How does it end?") : "Not at Release yet";

    protected override string Eyebrow => Job.End is { } end ? $"Release · {At(end.At)}, by {House.NameOf(end.By)}" : IsHere ? (WhyNot is null ? "Release · the proof report goes with the tool" : "Release · the tool cannot be released as it stands") : $"Release · the job stands at {Job.Station}";

    public Task<IActionResult> OnPostAsync() => TakeAsync(s => station.EndAsync(s, Job.Id, JobEnd.Released, null), PageOf(Station.Release));

    public Task<IActionResult> OnPostCorrectAsync(string? what) => TakeAsync(s => station.CorrectReportAsync(s, Job.Id, what), PageOf(Station.Release));

    public Task<IActionResult> OnPostEndAsync(string? end, string? why) => TakeAsync(
        s => end switch
        {
            "not-proven" => station.EndAsync(s, Job.Id, JobEnd.NotProven, why),
            "returned-unrepaired" => station.EndAsync(s, Job.Id, JobEnd.ReturnedUnrepaired, why),
            "retired" => station.EndAsync(s, Job.Id, JobEnd.Retired, why),
            "sent-out" => station.EndAsync(s, Job.Id, JobEnd.SentOut, why),
            _ => Task.FromResult(ActAnswer.Refuse("end", "No end was chosen.", "Choose how the job ends.")),
        },
        PageOf(Station.Release));
}
