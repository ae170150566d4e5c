using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Papers;

/// <summary>A report that takes an earlier one's place.</summary>
/// <param name="Why">What was corrected.</param>
/// <param name="By">Who signs the corrected report.</param>
public sealed record Correction(string Why, PersonId By);

/// <summary>Fills the proof report from the standing series of a job.</summary>
public static class ProofReportFiller
{
    /// <param name="number">The report's own number.</param>
    /// <param name="pastMeans">Means of the latest series of other tools of the model.</param>
    /// <param name="correction">Why it is issued once more; null the first time.</param>
    public static ProofReportInput Fill(PaperSource source, string number, ImmutableArray<Pressure> pastMeans, Correction? correction = null)
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
            Device = Device(source, opened),
            Reference = opened.What.Reference,
            OutputForce = Force(job, model, opened.What, closed.What.Verdict),
            Risk = ProofRisk.Of(series.ToProofSeries(), closed.What.Verdict, opened.What.Reference?.Capture ?? Pressure.FromPascals(0), pastMeans),
            Method = $"Full runs against the load named, {model.Limits.Rest.TotalSeconds:0} s of rest between them; the peak of each is read by the device named; the setting was not touched.",
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

    private static ProofForce? Force(JobState job, ServiceModel model, SeriesOpened opened, Verdict verdict) =>
        opened.Reference is { } reference && RamForce.Of(model, job.Friction?.What.Examine() as FrictionLoop.Shown) is { } ram ? ProofForce.Of(reference, verdict, ram) : null;

    /// <summary>What read the peaks; the tool's own memory stands with the gauge that it was compared with.</summary>
    private static DeviceLine Device(PaperSource source, Entry<SeriesOpened> opened) => opened.What.Reference?.Kind == ReferenceKind.ToolMemory
        ? Instrument(source, opened.What.Device, opened.At) with
        {
            Kind = BudgetText.Of(ReferenceKind.ToolMemory),
            Id = $"compared at this visit with {opened.What.Device}",
            Range = null,
            Response = source.Model.Behaviour?.SensorResponse is { } response ? string.Create(CultureInfo.InvariantCulture, $"time constant {response.TotalMilliseconds:0.###} ms") : null,
        }
        : Instrument(source, opened.What.Device, opened.At);

    /// <summary>An instrument of the house with the calibration that was in force then.</summary>
    internal static DeviceLine Instrument(PaperSource source, InstrumentId id, DateTimeOffset then)
    {
        var instrument = source.House.Find(id);
        var calibration = instrument?.Calibrations.FindLast(c => c.On <= source.Day(then)) ?? instrument?.Calibration;
        return new DeviceLine
        {
            Kind = instrument is null ? "instrument" : KindWord(instrument.Facts.Kind),
            Id = id.Value,
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
