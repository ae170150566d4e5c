using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations;

/// <summary>A job as an act finds it: open, at the station it acts at, with its model.</summary>
/// <param name="Job">The job as it stands.</param>
/// <param name="Shelved">Its model and the level that this has reached.</param>
public sealed record JobAtBench(Bench Bench, JobState Job, ShelvedModel Shelved)
{
    public ServiceModel Model => Shelved.Model;

    /// <summary>Runs an act on the job, or refuses it: no such job, ended, or at another station by now. What the same form has written before is the answer again.</summary>
    public static async Task<ActAnswer> ActAsync(Bench bench, Signature signature, JobId id, Station station, Func<JobAtBench, Task<ActAnswer>> act)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        if (await bench.Ledger.FindAsync(signature.Token) is { } first)
            return ActAnswer.Of(first);
        if (!job.IsOpen)
            return ActAnswer.Refuse("", $"Job {id} has ended.", "Take the tool in again as a new job.");
        return job.Station == station
            ? await act(new JobAtBench(bench, job, shelved))
            : ActAnswer.Refuse("", $"Job {id} stands at {job.Station} now.", $"Go on at {job.Station}.");
    }

    /// <summary>Writes the events as one, under the signature's token.</summary>
    public async Task<ActAnswer> WriteAsync(Signature signature, params IReadOnlyList<JobEvent> events) =>
        ActAnswer.Of(await Bench.Ledger.AppendOnceAsync(signature.Token, signature.By, Job.Id, signature.Seen, events));
}
