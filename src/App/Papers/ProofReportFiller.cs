using System.Collections.Immutable;
using Ramwright.Paper.Sheets;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Papers;

/// <summary>A report that takes an earlier one's place.</summary>
/// <param name="Why">What was corrected.</param>
/// <param name="By">Who signs the corrected report.</param>
public sealed record Correction(string Why, PersonId By);

/// <summary>Fills the proof report from the standing series of a job.</summary>
public static class ProofReportFiller
{
    /// <param name="number">The report's own number.</param>
    /// <param name="budget">Lines of what the device may be off, expanded.</param>
    /// <param name="correction">Why it is issued once more; null the first time.</param>
    public static ProofReportInput Fill(PaperSource source, string number, ImmutableArray<UncertaintyLine> budget, Correction? correction = null)
    {
        var (job, model) = (source.Job, source.Model);
        var series = job.StandingProof ?? throw new InvalidOperationException("No closed proof series stands.");
        var (opened, closed) = (series.Opened, series.Closed!);
        var released = job.End ?? throw new InvalidOperationException("The job has not ended yet.");
        var replaced = job.Reports.LastOrDefault(r => r.What.Kind == ReportKind.ProofReport)?.What.Number;
        return new ProofReportInput
        {
            Number = number,
            House = source.HouseHeader,
            Job = source.JobHeader,
            Limits = model.Limits,
            Series = series.ToProofSeries(),
            Verdict = closed.What.Verdict,
            Runs = [.. series.Runs.Select(r => new RunLine(r.Taken.What.Run, r.Taken.What.Peak, r.Taken.At, r.Void?.What.Cause))],
            AsFound = AsFound(job),
            NoAsFound = AsFound(job).IsEmpty ? "no run was read before the work began" : null,
            Device = Device(source, opened.What),
            Budget = budget,
            Method = $"Full runs against the load named below, {model.Limits.Rest.TotalSeconds:0} s of rest between them; the peak of each run is read by the device named. The tool's setting was not touched during the series.",
            Load = opened.What.Load ?? "dies closed",
            BenchTemperature = opened.What.Room,
            OilTemperatureFirst = opened.What.Oil,
            WorkDone = source.WorkDone,
            Tested = source.Day(closed.At),
            TestedBy = source.Signer(closed.By),
            Issued = source.Now,
            ReleasedBy = source.Signer(correction?.By ?? released.By),
            Ledger = source.Mark,
            Replaces = replaced,
            ModelFingerprint = job.Opened!.What.ModelFingerprint,
            Remarks =
            [
                .. job.Series.Count > 1 ? [$"This is series {series.Number} of this job; the earlier ones stay on record."] : Array.Empty<string>(),
                .. correction is null ? Array.Empty<string>() : [$"Corrected: {correction.Why}. It takes the place of {replaced}, which stays on record."],
            ],
        };
    }

    /// <summary>Runs before any turn of the screw: those read as found, or else the setting runs before the first turn.</summary>
    private static ImmutableArray<RunLine> AsFound(JobState job)
    {
        var read = job.AsFound.SelectMany(a => a.What.Peaks.Select(p => (Peak: p, a.At))).ToList();
        return [.. read.Select((r, i) => new RunLine(i + 1, r.Peak, r.At))];
    }

    private static DeviceLine Device(PaperSource source, SeriesOpened opened)
    {
        var instrument = source.House.Find(opened.Device);
        var calibration = instrument?.Calibration;
        return new DeviceLine
        {
            Kind = instrument is null ? "instrument" : KindWord(instrument.Facts.Kind),
            Id = opened.Device.Value,
            Serial = instrument?.Facts.SerialNumber,
            Range = instrument?.Facts.Range?.AsPressure is { } range ? $"0 to {range.Bar:0} bar" : instrument?.Facts.Range?.AsForce is { } force ? $"0 to {force.Kilonewtons:0} kN" : null,
            Response = Response(instrument?.Facts),
            Calibrated = calibration?.On,
            CalibrationDue = calibration?.Due,
            Certificate = calibration is null ? null : $"{calibration.Certificate}, {calibration.Laboratory}",
        };
    }

    private static string? Response(InstrumentRegistered? facts) => (facts?.Response, facts?.SamplingInterval) switch
    {
        ({ } response, { } sampling) => $"time constant {response.TotalMilliseconds:0.###} ms, a sample every {sampling.TotalMilliseconds:0.###} ms",
        ({ } response, null) => $"time constant {response.TotalMilliseconds:0.###} ms",
        _ => null,
    };

    private static string KindWord(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => "force cell",
        InstrumentKind.PortGauge => "port gauge",
        InstrumentKind.PeakHoldGauge => "peak-hold gauge",
        InstrumentKind.ToolMemory => "the tool's own memory",
        _ => "instrument",
    };
}
