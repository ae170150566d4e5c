using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Jobs;

/// <summary>Puts entries together into the job as it stands. Pure.</summary>
internal static class JobFold
{
    public static JobState All(JobId id, IEnumerable<Entry<JobEvent>> entries)
    {
        Entry<JobEvent>[] history = [.. entries];
        var corrected = CorrectedAmong(history);
        var state = new JobState { Id = id };
        foreach (var entry in history)
        {
            if (!corrected.Contains(entry.Number))
                state = Counted(state, entry);
        }

        return state with { History = [.. history], Corrected = [.. corrected] };
    }

    public static JobState After(JobState state, Entry<JobEvent> entry) => entry.What is EntryCorrected
        ? All(state.Id, state.History.Add(entry))
        : Counted(state, entry) with { History = state.History.Add(entry) };

    /// <summary>From the last to the first: a correction that was itself corrected takes nothing away.</summary>
    private static HashSet<EntryNumber> CorrectedAmong(ReadOnlySpan<Entry<JobEvent>> history)
    {
        HashSet<EntryNumber> corrected = [];
        for (var i = history.Length - 1; i >= 0; i--)
        {
            if (history[i].What is EntryCorrected correction && !corrected.Contains(history[i].Number))
                corrected.Add(correction.Entry);
        }

        return corrected;
    }

    private static JobState Counted(JobState s, Entry<JobEvent> e) => e.What switch
    {
        JobOpened x => s with { Opened = e.With(x), Station = Station.Arrive, Route = [e.With(new StationReached(Station.Arrive, null))] },
        StationReached x => s with { Station = x.Station, Route = s.Route.Add(e.With(x)) },
        StateSigned x => s with { SafeStates = s.SafeStates.Add(e.With(x)), Done = s.Done.Add(x.State) },
        FindingRecorded x => s with { Findings = s.Findings.Add(e.With(x)) },
        MeasurementRecorded x => s with { Measurements = s.Measurements.Add(e.With(x)) },
        CheckMade x => s with { Checks = s.Checks.RemoveAll(c => c.What.Check == x.Check).Add(e.With(x)) },
        StrokeRecorded x => s with { Strokes = s.Strokes.Add(e.With(x)) },
        AsFoundRead x => UnderPower(s) with { AsFound = s.AsFound.Add(e.With(x)) },
        TargetsChosen x => s with { Targets = e.With(x) },
        StripPlanned x => s with { Strip = new(e.With(x)) },
        QuoteMade x => s with { Quote = new(e.With(x), null) },
        QuoteAnswered x => s.Quote is { } quote ? s with { Quote = quote with { Answer = e.With(x) } } : s,
        InspectionAnswered x => s with { Inspections = s.Inspections.Add(e.With(x)) },
        RebuildPlanned x => s with { Rebuild = new(e.With(x)) },
        NoteWritten x => s with { Notes = s.Notes.Add(e.With(x)) },
        ReportIssued x => s with { Reports = s.Reports.Add(e.With(x)) },
        ToolQuarantined x => s with { Quarantine = e.With(x) },
        QuarantineLifted => s with { Quarantine = null },
        JobEnded x => s with { End = e.With(x) },
        StripStepSigned x => StripStep(Reworked(Superseded(s, e)), e.With(x)),
        RebuildStepSigned x => RebuildStep(Reworked(Superseded(s, e)), e.With(x)),
        ReliefTurned x => Turned(Superseded(s, e), e.With(x)),
        ReliefLocked x => s with { Setting = s.Setting with { Locked = e.With(x) } },
        SettingPeakRead x => UnderPower(s) with { Setting = s.Setting with { Runs = s.Setting.Runs.Add(new(e.With(x), s.Setting.Screw)) } },
        SeriesOpened x => s with { Series = s.Series.Add(new(e.With(x))) },
        RunTaken x => InSeries(UnderPower(s), x.Series, series => series with { Runs = series.Runs.Add(new(e.With(x), null)) }),
        SensorCompared x => UnderPower(s) with { Comparison = e.With(x) },
        FrictionLooped x => UnderPower(s) with { Friction = e.With(x) },
        RunVoided x => InSeries(s, x.Series, series => Voided(series, e.With(x))),
        SeriesClosed x => InSeries(s, x.Series, series => series with { Closed = e.With(x) }),
        EntryCorrected => s,
        _ => throw new ArgumentException($"The fold does not know {e.What.GetType().Name}.", nameof(e)),
    };

    private static JobState StripStep(JobState s, Entry<StripStepSigned> e)
    {
        if (s.Strip is not { } strip || e.What.Step < 0 || e.What.Step >= strip.Plan.Steps.Length)
            return s;
        var renewals = strip.Plan.Steps[e.What.Step].Renewals.Select(r => r.Part);
        return s with
        {
            Strip = strip with { Signed = strip.Signed.SetItem(e.What.Step, e) },
            Done = s.Done.Add(e.What.Node),
            RenewalsOwed = s.RenewalsOwed.Union(renewals),
        };
    }

    private static JobState RebuildStep(JobState s, Entry<RebuildStepSigned> e)
    {
        if (s.Rebuild is not { } rebuild || e.What.Step < 0 || e.What.Step >= rebuild.Plan.Steps.Length)
            return s;
        var step = rebuild.Plan.Steps[e.What.Step];
        // Parts made up on the bench are not in the tool yet: they are back once the unit is fitted.
        var done = step.Kind == Planning.Rebuild.RebuildKind.MakeUpUnit ? s.Done : s.Done.Except(step.Parts);
        return s with
        {
            Rebuild = rebuild with { Signed = rebuild.Signed.SetItem(e.What.Step, e) },
            Done = step.Node is { } node ? done.Remove(node) : done,
            RenewalsOwed = s.RenewalsOwed.Except(step.NewParts),
        };
    }

    private static JobState Turned(JobState s, Entry<ReliefTurned> e) => s with
    {
        Setting = s.Setting with
        {
            Screw = s.Setting.Screw + e.What.Turn,
            Turns = s.Setting.Turns.Add(e),
            Locked = null,
        },
    };

    private static SeriesState Voided(SeriesState series, Entry<RunVoided> e)
    {
        var at = series.Runs.FindIndex(r => r.Taken.What.Run == e.What.Run);
        return at < 0 ? series : series with { Runs = series.Runs.SetItem(at, series.Runs[at] with { Void = e }) };
    }

    private static JobState InSeries(JobState s, int number, Func<SeriesState, SeriesState> change)
    {
        var at = s.Series.FindIndex(series => series.Number == number);
        return at < 0 ? s : s with { Series = s.Series.SetItem(at, change(s.Series[at])) };
    }

    /// <summary>A full run puts the pack on and builds pressure: whatever state the tool was brought into ends, and a new plan reaches it anew.</summary>
    private static JobState UnderPower(JobState s)
    {
        var states = s.SafeStates.Select(e => e.What.State);
        return s with { Done = s.Done.Except(s.Strip is { } strip ? states.Concat(strip.Plan.States) : states) };
    }

    /// <summary>The tool was taken apart or put together: what its sensor and its friction were like before says nothing now.</summary>
    private static JobState Reworked(JobState s) => s with { Comparison = null, Friction = null };

    /// <summary>Work on the tool: the last series no longer speaks of the tool as it is.</summary>
    private static JobState Superseded(JobState s, Entry<JobEvent> work) => s.Series is [.., { Superseded: null } last]
        ? s with { Series = s.Series.SetItem(s.Series.Count - 1, last with { Superseded = work }) }
        : s;
}
