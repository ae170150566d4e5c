using System.Collections.Immutable;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Prove;

/// <summary>One reference that could measure the proof of this tool today.</summary>
/// <param name="Value">What a form calls it: an inventory number, or <see cref="MemoryFit.Value"/>.</param>
/// <param name="Name">Number and name.</param>
public sealed record ReferenceChoice(ReferenceKind Kind, string Value, string Name, DeviceFit Fit)
{
    /// <summary>What it may be off, or what stands in its way.</summary>
    public string Stands(Words words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Fit is DeviceFit.Fits { Budget.Systematic: var off }
            ? $"a true peak may lie {words.Show(off.BelowLimit)} below to {words.Show(off.AboveLimit)} above its reading"
            : ((DeviceFit.Unfit)Fit).What;
    }
}

/// <summary>The references of the house for one tool, by their kind.</summary>
public static class References
{
    /// <summary>All that read peaks and are in use, the simulated first, and the tool's own memory last.</summary>
    public static ImmutableArray<ReferenceChoice> Of(HouseState house, JobState job, ServiceModel model, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(job);
        var stands = new Circumstances { Friction = job.Friction?.What.Examine() as FrictionLoop.Shown };
        return
        [
            .. DeviceChoice.Instruments(house).Select(i => new ReferenceChoice(KindOf(i.Facts.Kind), i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}", DeviceFit.Of(i, model, day, stands))),
            new ReferenceChoice(ReferenceKind.ToolMemory, MemoryFit.Value, "the tool's own memory", MemoryFit.Of(job, model, stands)),
        ];
    }

    /// <summary>As options of a form: those that may prove first.</summary>
    public static ImmutableArray<Option> Options(ImmutableArray<ReferenceChoice> choices, Words words) =>
        [.. choices.OrderBy(c => c.Fit is DeviceFit.Fits ? 0 : 1).Select(c => new Option(c.Value, $"{(c.Kind == ReferenceKind.ToolMemory ? c.Name : $"{BudgetText.Of(c.Kind)} {c.Name}")}: {Short(c.Fit, words)}"))];

    private static string Short(DeviceFit fit, Words words) => fit is DeviceFit.Fits { Budget.Systematic: var off } ? $"may be off by {words.Show(off.AboveLimit)}" : "cannot prove this tool";

    private static ReferenceKind KindOf(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => ReferenceKind.ForceCell,
        InstrumentKind.PeakHoldGauge => ReferenceKind.PeakHoldGauge,
        _ => ReferenceKind.PortGauge,
    };
}
