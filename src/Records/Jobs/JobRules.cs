using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.Store;

namespace Ramwright.Records.Jobs;

/// <summary>What cannot follow on what stands. Whether it is wise is the pages' business; this is what the record could not bear.</summary>
public static class JobRules
{
    /// <summary>Why the event cannot follow; null when it can.</summary>
    public static Appended.Refused? Refuse(JobState job, JobEvent next) =>
        OfTheWhole(job, next) ?? next switch
        {
            StationReached x => OfRoute(job, x),
            QuoteMade x => NumberOfPaper(job, x.Number),
            ReportIssued x => NumberOfPaper(job, x.Number),
            QuoteAnswered => job.Quote is null ? No("no-quote", "There is no quote to answer.", "Make the quote first.") : null,
            StripStepSigned x => OfStrip(job, x),
            RebuildStepSigned x => OfRebuild(job, x),
            ReliefTurned => WhileSeries(job, "The screw is not turned while a proof series is open."),
            SettingPeakRead => WhileSeries(job, "A setting run is not read while a proof series is open."),
            SensorCompared => WhileSeries(job, "The tool's sensor is not compared while a proof series is open."),
            FrictionLooped => WhileSeries(job, "The ram is not loaded up and down while a proof series is open."),
            SeriesOpened or RunTaken or RunVoided or SeriesClosed => SeriesRules.Refuse(job, next),
            QuarantineLifted => job.Quarantine is null ? No("not-quarantined", "The tool is not in quarantine.", "Nothing is to be lifted.") : null,
            JobEnded x => OfEnd(job, x),
            EntryCorrected x => OfCorrection(job, x),
            _ => null,
        };

    internal static Appended.Refused No(string code, string what, string mend) => new(code, what, mend);

    internal static Appended.Refused? WhileSeries(JobState job, string what) => job.OpenSeries is { } series
        ? No("series-is-open", what, $"Close series {series.Number} first.")
        : null;

    private static Appended.Refused? OfTheWhole(JobState job, JobEvent next)
    {
        if (job.Opened is null != next is JobOpened)
        {
            return next is JobOpened
                ? No("job-is-open", $"Job {job.Id} is open already.", "A tool that comes back gets a job of its own.")
                : No("job-not-open", $"Job {job.Id} has not been opened.", "Open the job first.");
        }

        if (job.End is { } end && next is not (ReportIssued or NoteWritten or EntryCorrected))
            return No("job-has-ended", $"Job {job.Id} ended at entry {end.Number}.", "Open a new job, or correct the end if it was a slip.");
        return job.Quarantine is { } quarantine && next is (SettingPeakRead or SeriesOpened or RunTaken or SensorCompared or FrictionLooped)
            ? No("in-quarantine", $"The tool is in quarantine since entry {quarantine.Number}: a run went above its maximum.", "Have its frame inspected and record that first.")
            : null;
    }

    private static Appended.Refused? OfRoute(JobState job, StationReached next)
    {
        if (next.Station == job.Station)
            return No("same-station", $"The job is at {next.Station} already.", "Go on from there.");
        return next.Station < job.Station && string.IsNullOrWhiteSpace(next.Why)
            ? No("no-reason", $"The job goes back from {job.Station} to {next.Station} without a reason.", "Say why.")
            : null;
    }

    private static Appended.Refused? NumberOfPaper(JobState job, string number)
    {
        if (!number.StartsWith(job.Id + "-", StringComparison.Ordinal))
            return No("number-of-another-job", $"{number} is no number of job {job.Id}.", "Take the number that the job gives.");
        var taken = job.History.Any(e => (e.What is ReportIssued r && r.Number == number) || (e.What is QuoteMade q && q.Number == number));
        return taken ? No("number-taken", $"{number} has been given already.", "Take the next number.") : null;
    }

    private static Appended.Refused? OfStrip(JobState job, StripStepSigned next)
    {
        if (WhileSeries(job, "A tool is not stripped while its proof series is open.") is { } open)
            return open;
        if (job.Strip is not { } strip || next.Step < 0 || next.Step >= strip.Plan.Steps.Length || strip.Plan.Steps[next.Step].Node != next.Node)
            return No("step-not-in-plan", $"Step {next.Step + 1} ({next.Node}) is not in the strip plan that stands.", "Load the page again: the plan was made anew.");
        return strip.Signed.TryGetValue(next.Step, out var signed)
            ? No("step-is-signed", $"Step {next.Step + 1} was signed at entry {signed.Number}.", "Go on with the next step.")
            : null;
    }

    private static Appended.Refused? OfRebuild(JobState job, RebuildStepSigned next)
    {
        if (WhileSeries(job, "A tool is not rebuilt while its proof series is open.") is { } open)
            return open;
        if (job.Rebuild is not { } rebuild || next.Step < 0 || next.Step >= rebuild.Plan.Steps.Length)
            return No("step-not-in-plan", $"Step {next.Step + 1} is not in the rebuild plan that stands.", "Load the page again: the plan was made anew.");
        return rebuild.Signed.TryGetValue(next.Step, out var signed)
            ? No("step-is-signed", $"Step {next.Step + 1} was signed at entry {signed.Number}.", "Go on with the next step.")
            : null;
    }

    private static Appended.Refused? OfEnd(JobState job, JobEnded next)
    {
        if (WhileSeries(job, "The job does not end while a proof series is open.") is { } open)
            return open;
        if (next.End != JobEnd.Released)
            return null;
        if (job.Quarantine is { } quarantine)
            return No("in-quarantine", $"The tool is in quarantine since entry {quarantine.Number}.", "Have its frame inspected and record that first.");
        return job.StandingProof?.Closed?.What.Verdict.Conformity == Conformity.Conforms
            ? null
            : No("release-needs-proof", "Only a tool whose last proof series stands and conforms is released.", "Prove it, or choose another end: returned unrepaired, not proven, retired, sent out.");
    }

    private static Appended.Refused? OfCorrection(JobState job, EntryCorrected next)
    {
        if (job.History.Find(e => e.Number == next.Entry) is not { } entry)
            return No("no-such-entry", $"Entry {next.Entry} is none of job {job.Id}.", "Correct an entry of this job.");
        if (job.Corrected.Contains(next.Entry))
            return No("already-corrected", $"Entry {next.Entry} no longer counts.", "Nothing is left to correct.");
        if (string.IsNullOrWhiteSpace(next.Why))
            return No("no-reason", "A correction says why.", "Write the reason.");
        return entry.What switch
        {
            JobOpened => No("not-correctable", "The opening of a job is not taken back.", "End the job as returned unrepaired and open another."),
            SeriesOpened or RunTaken or RunVoided or SeriesClosed => No("not-correctable", "What belongs to a proof series is not taken back: runs are never dropped for their value.",
                "Void the run for a cause recorded apart from its value, or close the series and open another."),
            ToolQuarantined or QuarantineLifted => No("not-correctable", "A run above the maximum stays on record.", "Record the inspection of the frame."),
            SensorCompared or FrictionLooped when job.Series.Exists(s => s.Opened.Number > entry.Number) => No("not-correctable", "A proof series was opened on this comparison.",
                "Compare again, and open another series."),
            ReportIssued => No("not-correctable", "A paper that was issued stays on record.", "Issue a new one that says what it replaces."),
            _ => null,
        };
    }
}
