using Ramwright.App.Web.Pages;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Release;

/// <summary>What happens at Release: the job comes to one of its five ends. Only a standing proof that conforms releases a tool.</summary>
public sealed class ReleaseStation(Web.Pages.Bench bench)
{
    /// <summary>Why the tool cannot be released by this person now; null when it can.</summary>
    public static FormMistakeReason? WhyNot(JobState job, PersonRegistered? person) => (job, person) switch
    {
        ({ Quarantine: not null }, _) => new("The tool is quarantined: it went above its maximum.", "Have the frame inspected and record it, or choose another end."),
        ({ StandingProof: null }, _) => new("No closed proof series stands.", "Close a series at Prove, or choose another end."),
        ({ StandingProof.Closed.What.Verdict.Conformity: not Conformity.Conforms }, _) => new("The proof that stands does not say 'conforms'.", "Set and prove again, or choose the end 'not proven'."),
        (_, null or { MayAuthoriseRelease: false }) => new("This person may not authorise a release.", "Let somebody sign who may; see People."),
        _ => null,
    };

    /// <summary>Ends the job.</summary>
    public async Task<ActAnswer> EndAsync(JobState job, HouseState house, Signature sign, JobEnd end, string why)
    {
        if (end == JobEnd.Released && WhyNot(job, house.Find(sign.By)) is { } reason)
            return ActAnswer.Refuse("", reason.What, reason.Mend);
        if (end != JobEnd.Released && string.IsNullOrWhiteSpace(why))
            return ActAnswer.Refuse("Why", "No reason was given.", "Say why the job ends so; it stands on the paper.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new JobEnded(end, why.Trim())));
    }
}

/// <summary>Why something cannot be, and what to do.</summary>
public sealed record FormMistakeReason(string What, string Mend);
