using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.Paper.Sheets;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Papers;

/// <summary>Fills the proof report from the standing series of a job.</summary>
public static class ProofReportFiller
{
    /// <param name="number">The report's own number.</param>
    /// <param name="releasedBy">Who authorises the release.</param>
    public static ProofReportInput Fill(Bench bench, JobState job, ServiceModel model, HouseState house, LedgerHead head, string number, PersonId releasedBy)
    {
        var series = job.StandingProof ?? throw new InvalidOperationException("No closed proof series stands.");
        var (opened, closed) = (series.Opened, series.Closed!);
        var asFound = job.AsFound.SelectMany(a => a.What.Peaks.Select(p => (Peak: p, a.At))).ToList();
        return new ProofReportInput
        {
            Number = number,
            House = PaperHeads.House(house.Settings),
            Job = PaperHeads.Job(job, house, model),
            Limits = model.Limits,
            Series = series.ToProofSeries(),
            Verdict = closed.What.Verdict,
            Runs = [.. series.Runs.Select(r => new RunLine(r.Taken.What.Run, r.Taken.What.Peak, r.Taken.At, r.Void?.What.Cause))],
            AsFound = [.. asFound.Select((r, i) => new RunLine(i + 1, r.Peak, r.At))],
            NoAsFound = asFound.Count == 0 ? "no full run was read before the work began" : null,
            Device = Device(house, opened.What),
            Budget = house.Find(opened.What.Device) is { } instrument && DeviceFit.Of(instrument, model, DateOnly.FromDateTime(opened.At.DateTime)) is DeviceFit.Fits fits ? fits.Budget : [],
            Method = string.Create(CultureInfo.InvariantCulture, $"Full runs against the load named below, {model.Limits.Rest.TotalSeconds:0} s of rest between them; the device named reads the peak of each run. The setting was not touched during the series."),
            Load = opened.What.Load ?? "dies closed",
            BenchTemperature = opened.What.Room,
            OilTemperatureFirst = opened.What.Oil,
            WorkDone = WorkWords.Of(job, model, PaperHeads.Units(house.Settings)),
            Tested = DateOnly.FromDateTime(closed.At.DateTime),
            TestedBy = PaperHeads.Signer(house, closed.By),
            Issued = bench.Clock.GetLocalNow(),
            ReleasedBy = PaperHeads.Signer(house, releasedBy),
            Ledger = PaperHeads.Mark(head),
            ModelFingerprint = job.Opened!.What.ModelFingerprint,
            Remarks = job.Series.Count > 1 ? [string.Create(CultureInfo.InvariantCulture, $"This is series {series.Number} of this job; the earlier ones stay on record.")] : [],
        };
    }

    private static DeviceLine Device(HouseState house, SeriesOpened opened)
    {
        var instrument = house.Find(opened.Device);
        var calibration = instrument?.Calibration;
        return new DeviceLine
        {
            Kind = instrument is null ? "instrument" : KindWord(instrument.Facts.Kind),
            Id = opened.Device.Value,
            Serial = instrument?.Facts.SerialNumber,
            Range = instrument?.Facts.Range?.AsPressure is { } range ? string.Create(CultureInfo.InvariantCulture, $"0 to {range.Bar:0} bar") : instrument?.Facts.Range?.AsForce is { } force ? string.Create(CultureInfo.InvariantCulture, $"0 to {force.Kilonewtons:0} kN") : null,
            Response = Response(instrument?.Facts),
            Calibrated = calibration?.On,
            CalibrationDue = calibration?.Due,
            Certificate = calibration is null ? null : $"{calibration.Certificate}, {calibration.Laboratory}",
        };
    }

    private static string? Response(InstrumentRegistered? facts) => (facts?.Response, facts?.SamplingInterval) switch
    {
        ({ } response, { } sampling) => string.Create(CultureInfo.InvariantCulture, $"time constant {response.TotalMilliseconds:0.###} ms, a sample every {sampling.TotalMilliseconds:0.###} ms"),
        ({ } response, null) => string.Create(CultureInfo.InvariantCulture, $"time constant {response.TotalMilliseconds:0.###} ms"),
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
