using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;

namespace Ramwright.App.House.Instruments;

/// <summary>An instrument that was found off, and the jobs that relied on it since its calibration before.</summary>
public sealed record Doubt(string Instrument, DateOnly Since, DateOnly Until, ImmutableArray<JobState> Jobs)
{
    /// <summary>The days, in words.</summary>
    public string When => Since == DateOnly.MinValue ? $"until {Words.Day(Until)}" : $"from {Words.Day(Since)} to {Words.Day(Until)}";
}

/// <summary>What the house measures with, and whether it may still rely on it.</summary>
public sealed class InstrumentsPage(Bench bench) : BenchPage(bench)
{
    private const int MostJobs = 200;

    public override bool NeedsPerson => false;

    public ImmutableArray<InstrumentState> Instruments => [.. House.InstrumentsById.Values.OrderBy(i => i.Calibration?.Due ?? DateOnly.MinValue)];

    public int Due => Instruments.Count(i => i.Facts.InUse && i.IsDueOn(Bench.Today));

    public override Sheet Sheet => new()
    {
        Title = "Instruments",
        Eyebrow = Due == 0 ? "All may be relied on today" : $"{Due} must not be relied on until calibrated",
        Place = "instruments",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, new("Instruments", $"{Instruments.Length}"), new("Expired", $"{Due}"), PersonField, new("Sheet", "instruments", Less: true)],
    };

    /// <summary>What failed calibrations put in doubt.</summary>
    public ImmutableArray<Doubt> Doubts { get; private set; } = [];

    protected override async Task<IActionResult?> DrawAsync()
    {
        var doubts = ImmutableArray.CreateBuilder<Doubt>();
        foreach (var instrument in Instruments)
        {
            if (instrument.InDoubt is { } days)
                doubts.Add(new(instrument.Facts.Instrument.Value, days.Since, days.Until, await Bench.Ledger.MeasuredWithAsync(instrument.Facts.Instrument, days.Since, days.Until, MostJobs, HttpContext.RequestAborted)));
        }

        Doubts = doubts.ToImmutable();
        return await base.DrawAsync();
    }

    /// <summary>In plain words: until when it may be relied on.</summary>
    public (string Text, bool Bad) Standing(InstrumentState i)
    {
        if (!i.Facts.InUse)
            return ("withdrawn", false);
        if (i.Calibration is not { } last)
            return ("never calibrated: not for a proof", true);
        var days = last.Due.DayNumber - Bench.Today.DayNumber;
        return days < 0 ? ($"expired {-days} d ago: not for a proof", true)
            : days == 0 ? ("due today, may still be used", true)
            : ($"good for {days} d, until {Words.Day(last.Due)}", false);
    }

    public static string KindWord(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => "force cell",
        InstrumentKind.PortGauge => "port gauge",
        InstrumentKind.PeakHoldGauge => "peak-hold gauge",
        InstrumentKind.ToolMemory => "tool’s own memory",
        InstrumentKind.TorqueWrench => "torque wrench",
        InstrumentKind.Calliper => "calliper",
        InstrumentKind.Thermometer => "thermometer",
        InstrumentKind.Scale => "scale",
        _ => "other",
    };
}
