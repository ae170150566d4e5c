using System.Globalization;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.Records.Tests.Jobs;

/// <summary>
/// Plays a job one line per event, numbered as the ledger would number them, and checks what stands in between.
/// <c>refused CODE: EVENT</c> says that the event cannot follow; <c>= THING VALUE</c> says how the job stands. No database.
/// </summary>
internal static class JobScript
{
    public static readonly PersonId Ada = PersonId.Parse("ada-fenn");

    public static JobState Play(string script)
    {
        var state = new JobState { Id = JobId.Parse("SM-0417") };
        foreach (var line in script.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (line.StartsWith('='))
                JobScriptChecks.Check(state, line[1..].Trim());
            else if (line.StartsWith("refused ", StringComparison.Ordinal))
                Refused(state, line);
            else
                state = Follow(state, line);
        }

        Assert.Equal(Summary(state), Summary(JobState.Fold(state.Id, state.History))); // step by step and all at once agree
        return state;
    }

    public static Entry<JobEvent> Entry(JobState state, JobEvent what)
    {
        var number = state.Version.Value + 1;
        return new(new(number), new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero).AddMinutes(number), Ada, what);
    }

    /// <summary>What stands, without the history, as text.</summary>
    public static string Summary(JobState s) => string.Join('|',
        s.Station, s.SafeStates.Count, s.Findings.Count, s.Strip?.Planned.Number, Keys(s.Strip?.Signed.Keys), s.Quote?.Made.Number, s.Quote?.Answer?.Number,
        s.Rebuild?.Planned.Number, Keys(s.Rebuild?.Signed.Keys), s.Setting.Screw.Turns, s.Setting.Runs.Count, s.Setting.Locked?.Number,
        string.Join(',', s.Series.Select(x => $"{x.Number}:{string.Join('/', x.Peaks.Select(p => p.Bar))}:{x.Closed?.Number}:{x.Superseded?.Number}")),
        string.Join(',', s.Done.Select(n => n.Value).Order(StringComparer.Ordinal)), string.Join(',', s.RenewalsOwed.Select(n => n.Value).Order(StringComparer.Ordinal)),
        s.Quarantine?.Number, s.End?.Number, string.Join(',', s.Corrected.Select(n => n.Value).Order()), s.Notes.Count, s.Inspections.Count);

    private static string Keys(IEnumerable<int>? keys) => keys is null ? "-" : string.Join(',', keys);

    private static JobState Follow(JobState state, string line)
    {
        var what = JobScriptEvents.Read(state, line);
        var refused = JobRules.Refuse(state, what);
        Assert.True(refused is null, $"'{line}' was refused: {refused?.Code}, {refused?.What}");
        return state.After(Entry(state, what));
    }

    private static void Refused(JobState state, string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        var refused = JobRules.Refuse(state, JobScriptEvents.Read(state, line[(colon + 1)..].Trim()));
        Assert.Equal(line["refused ".Length..colon], refused?.Code);
        Assert.All(new[] { refused!.What, refused.Mend }, words => Assert.EndsWith(".", words, StringComparison.Ordinal));
    }

    public static int Int(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
