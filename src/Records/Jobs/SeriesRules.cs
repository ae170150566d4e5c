using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Jobs;

/// <summary>What a proof series does not allow: runs beyond the plan, numbers out of order, verdicts on other runs than its own.</summary>
internal static class SeriesRules
{
    public static Appended.Refused? Refuse(JobState job, JobEvent next) => next switch
    {
        SeriesOpened x => Opening(job, x),
        RunTaken x => Of(job, x.Series) ?? Taking(job.OpenSeries!, x),
        RunVoided x => Of(job, x.Series) ?? Voiding(job.OpenSeries!, x),
        SeriesClosed x => Of(job, x.Series) ?? Closing(job.OpenSeries!, x),
        _ => null,
    };

    private static Appended.Refused? Opening(JobState job, SeriesOpened next)
    {
        if (JobRules.WhileSeries(job, "A proof series is open already.") is { } open)
            return open;
        if (next.Series != job.NextSeries)
            return JobRules.No("series-number", $"The next series of the job is {job.NextSeries}, not {next.Series}.", "Load the page again.");
        if (next.PlannedRuns is < 2 or > 1000)
            return JobRules.No("planned-runs", $"{next.PlannedRuns} runs are no series.", "Plan 2 to 1,000 runs.");
        return next switch
        {
            { MoreRuns: < 1 or > 1000 } => JobRules.No("more-runs", $"{next.MoreRuns} more runs are no extension.", "Declare 1 to 1,000 more runs, or none."),
            { MoreRuns: not null, Earlier: not null } => JobRules.No("extended-and-moderated", "A series cannot be extended and moderated by earlier ones: no factor keeps the confidence of both.", "Declare one of the two."),
            { Earlier.Length: < EarlierSeries.Fewest } => JobRules.No("few-earlier-series", $"{next.Earlier!.Value.Length} earlier series say too little.", $"At least {EarlierSeries.Fewest} are wanted; use the tool's own scatter."),
            ({ MoreRuns: not null } or { Earlier: not null }) and { Rule: not DecisionRule.OneSidedPerLimit } => JobRules.No("rule-stands-alone", "An extension or earlier series go with one-sided claims per limit alone.", "Leave it out, or change the model's rule."),
            _ => null,
        };
    }

    private static Appended.Refused? Of(JobState job, int series) => job.OpenSeries?.Number == series
        ? null
        : JobRules.No("series-not-open", $"Series {series} is not open.", "Open a series first.");

    private static Appended.Refused? Taking(SeriesState series, RunTaken next)
    {
        if (series.IsFull)
            return JobRules.No("series-full", $"The {series.Places} runs are there; none is added.", "Close the series.");
        if (next.Run != series.NextRun)
            return JobRules.No("run-number", $"The next run is {series.NextRun}, not {next.Run}.", "Load the page again.");
        return next.Device != series.Opened.What.Device
            ? JobRules.No("other-device", $"The series was opened with {series.Opened.What.Device}, not {next.Device}.", "Go on with the same device, or close the series.")
            : null;
    }

    private static Appended.Refused? Voiding(SeriesState series, RunVoided next)
    {
        if (series.Runs.Find(r => r.Taken.What.Run == next.Run) is not { } run)
            return JobRules.No("no-such-run", $"There is no run {next.Run} in series {series.Number}.", "Name a run that was taken.");
        if (run.Void is { } before)
            return JobRules.No("run-is-void", $"Run {next.Run} is void since entry {before.Number}.", "Go on.");
        return string.IsNullOrWhiteSpace(next.Cause)
            ? JobRules.No("no-reason", "A run is void only for a cause recorded apart from its value.", "Write the cause.")
            : null;
    }

    /// <summary>The verdict is on all runs, or, where a run was voided after an extension had begun, on the planned ones that decide after all.</summary>
    private static Appended.Refused? Closing(SeriesState series, SeriesClosed next) =>
        next.Verdict.Runs == series.Peaks.Length || (series.Opened.What.MoreRuns is not null && next.Verdict.Runs == series.Opened.What.PlannedRuns)
        ? null
        : JobRules.No("verdict-of-other-runs", $"The verdict is on {next.Verdict.Runs} runs, the series holds {series.Peaks.Length}.", "Load the page again: a run came in.");
}
