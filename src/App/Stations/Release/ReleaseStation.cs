using Ramwright.App.Papers;
using Ramwright.App.Web.Pages;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Signing;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Release;

/// <summary>What happens at Release: the job comes to one of its five ends. Only a standing proof that conforms releases a tool.</summary>
public sealed class ReleaseStation(Bench bench, PaperArchive archive)
{
    private const byte PaperPart = 9;

    /// <summary>Why the tool cannot be released by this person now, and what to do; null when it can.</summary>
    public static (string What, string Mend)? WhyNot(JobState job, PersonRegistered? person) => (job, person) switch
    {
        ({ Quarantine: not null }, _) => ("The tool is quarantined: it went above its maximum.", "Have the frame inspected and record it, or choose another end."),
        ({ StandingProof: null }, _) => ("No closed proof series stands.", "Close a series at Prove, or choose another end."),
        ({ StandingProof.Closed.What.Verdict.Conformity: not Conformity.Conforms }, _) => ("The proof that stands does not say 'conforms'.", "Set and prove again, or choose the end 'not proven'."),
        (_, null or { MayAuthoriseRelease: false }) => ("This person may not authorise a release.", "Let somebody sign who may; see People."),
        _ => null,
    };

    /// <summary>Ends the job. A release is made at Release alone; the other ends can be chosen at any station. The same form sent again issues the paper, should it be missing.</summary>
    public async Task<ActAnswer> EndAsync(Signature signature, JobId id, JobEnd end, string? why)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: not null } job)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        if (await bench.Ledger.FindAsync(signature.Token) is not null)
            return await bench.Ledger.FindAsync(signature.ForPart(PaperPart).Token) is { } issued ? ActAnswer.Of(issued) : await IssueAsync(signature.ForPart(PaperPart), id, await bench.Ledger.HouseAsync());
        if (!job.IsOpen)
            return ActAnswer.Refuse("", $"Job {id} has ended already.", "Take the tool in again as a new job.");
        var house = await bench.Ledger.HouseAsync();
        if (end == JobEnd.Released && job.Station != Station.Release)
            return ActAnswer.Refuse("", $"Job {id} stands at {job.Station}.", "A tool is released at Release, after its proof.");
        if (end == JobEnd.Released && WhyNot(job, house.Find(signature.By)) is { } not)
            return ActAnswer.Refuse("", not.What, not.Mend);
        if (end == JobEnd.Released && Doubts.Of(job, house, bench.Clock.LocalTimeZone) is [var doubt, ..])
            return ActAnswer.Refuse("", doubt, "Prove it again, or tighten it again, with an instrument that may be relied on; or choose another end.");
        if (end == JobEnd.Released && KeyFault(house) is { } fault)
            return fault;
        if (end != JobEnd.Released && string.IsNullOrWhiteSpace(why))
            return ActAnswer.Refuse("why", "No reason was given.", "Say why the job ends so; it stands on the paper.");

        var reason = string.IsNullOrWhiteSpace(why) ? "the proof conforms" : why.Trim();
        var ended = ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen, new JobEnded(end, reason)));
        if (ended is not ActAnswer.Done)
            return ended;
        return await IssueAsync(signature.ForPart(PaperPart), id, house);
    }

    /// <summary>Issues the proof report of a released tool once more, after a correction: under a new number, in the place of the last.</summary>
    public async Task<ActAnswer> CorrectReportAsync(Signature signature, JobId id, string? why)
    {
        if (await bench.Ledger.FindAsync(signature.Token) is { } sent)
            return ActAnswer.Of(sent);
        if (await bench.Ledger.ReadAsync(id) is not { End.What.End: JobEnd.Released, StandingProof: not null })
            return ActAnswer.Refuse("", $"Job {id} has no proof report that could be corrected.", "A report is corrected after its tool was released.");
        var house = await bench.Ledger.HouseAsync();
        if (house.Find(signature.By) is null or { MayAuthoriseRelease: false })
            return ActAnswer.Refuse("", "This person may not authorise a release.", "Let somebody sign who may; see People.");
        if (string.IsNullOrWhiteSpace(why))
            return ActAnswer.Refuse("what", "Nothing was said about what is corrected.", "Say what is corrected; it stands on the new report.");
        return KeyFault(house) ?? await IssueAsync(signature, id, house, new Correction(why.Trim().TrimEnd('.'), signature.By));
    }

    /// <summary>A refusal where the house's key cannot sign; null when it can. Asked before anything is recorded.</summary>
    private ActAnswer? KeyFault(HouseState house)
    {
        try
        {
            archive.Keys.Open(house.Settings.ShopName).Dispose();
            return null;
        }
        catch (KeyRingException fault)
        {
            return ActAnswer.Refuse("", $"The report cannot be signed: {fault.Reason}.", $"{fault.Remedy}. Nothing was recorded.");
        }
    }

    /// <summary>Issues the paper that the end asks for: the proof report, or the one-page paper of another end. It stands on the entry that ended the job.</summary>
    private async Task<ActAnswer> IssueAsync(Signature signature, JobId id, HouseState house, Correction? correction = null)
    {
        var job = await bench.Ledger.ReadAsync(id) ?? throw new InvalidOperationException("The job was just read.");
        var model = bench.Models.Find(job.Opened!.What.ModelId)!.Model;
        var head = await bench.Ledger.HeadAsync();
        var source = new PaperSource(job, model, house, head, bench.Clock);
        var kind = job.End!.What.End == JobEnd.Released ? ReportKind.ProofReport : ReportKind.ServiceRecord;
        var number = job.NextReportNumber(kind);
        if (kind != ReportKind.ProofReport)
            return await archive.IssueAsync(id, signature, kind, number, EndPaper.Render(PaperFiller.End(source, number), source.Size, source.Units), head);
        using var key = archive.Keys.Open(house.Settings.ShopName);
        var past = await bench.Ledger.EarlierProofsAsync(model.Tool.Id, job.Opened.What.Tool);
        var input = ProofReportFiller.Fill(source, number, [.. past.Select(p => p.Mean)], correction);
        return await archive.IssueAsync(id, signature, number, SignedReport.Of(input, source.Size, source.Units, key), input.Replaces, head);
    }
}
