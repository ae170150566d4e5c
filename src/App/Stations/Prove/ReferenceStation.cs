using System.Collections.Immutable;
using Ramwright.App.Devices;
using Ramwright.App.Papers;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove;

/// <summary>A comparison of the tool's sensor, as it was read at the bench.</summary>
/// <param name="Allowed">The most that the sensor may be off.</param>
/// <param name="Resolution">Smallest step that the tool shows; null when not known.</param>
/// <param name="Points">As shown; the reference's readings are corrected by its calibration before they count.</param>
public sealed record ComparisonWish(InstrumentId Reference, Pressure Allowed, Pressure? Resolution, ImmutableArray<SensorPoint> Points);

/// <summary>What is done at Prove before a series opens, so that a reference may be relied on: the tool's sensor is compared, the ram is loaded up and down.</summary>
public sealed class ReferenceStation(Bench bench, PaperArchive archive)
{
    /// <summary>The tool's own sensor was compared, at held pressures, with an instrument that may be relied on.</summary>
    public Task<ActAnswer> CompareAsync(Signature signature, JobId id, ComparisonWish wish) => AtProve(signature, id, async at =>
    {
        var house = await bench.Ledger.HouseAsync();
        if (house.Find(wish.Reference) is not { Facts.Kind: InstrumentKind.PortGauge or InstrumentKind.PeakHoldGauge } instrument)
            return ActAnswer.Refuse("reference", $"{wish.Reference} is no gauge of the house.", "Choose a gauge at the pressure port.");
        if (DeviceFit.Of(instrument, at.Model, bench.Today) is not DeviceFit.Fits { Budget: var budget })
            return ActAnswer.Refuse("reference", ((DeviceFit.Unfit)DeviceFit.Of(instrument, at.Model, bench.Today)).What, "Choose another gauge, or have this one calibrated.");
        double Corrected(double pascals) => budget.Correction?.Correct(Pressure.FromPascals(pascals)).Pascals ?? pascals;
        var (systematic, random) = (budget.SystematicStandard.Pascals, budget.RandomStandard.Pascals);
        var compared = new SensorCompared(wish.Reference, Pressure.FromPascals(Math.Sqrt((systematic * systematic) + (random * random))), wish.Allowed, wish.Resolution,
            [.. wish.Points.Select(p => p with { Reference = Corrected(p.Reference) })]);
        return compared.Examine() is SensorAnswer.TooFew few
            ? ActAnswer.Refuse("points", SensorText.Explain(few), "Take three levels or more, each twice or more from the same side.")
            : await at.WriteAsync(signature, compared);
    });

    /// <summary>The ram was loaded up and down at held pressures under a force cell.</summary>
    public Task<ActAnswer> LoopAsync(Signature signature, JobId id, InstrumentId cell, ImmutableArray<ForcePair> loops) => AtProve(signature, id, async at =>
    {
        if ((await bench.Ledger.HouseAsync()).Find(cell) is not { Facts.Kind: InstrumentKind.ForceCell } instrument)
            return ActAnswer.Refuse("cell", $"{cell} is no force cell of the house.", "Choose the cell between the jaw blocks.");
        if (DeviceFit.WhyNot(instrument, bench.Today) is { } not)
            return ActAnswer.Refuse("cell", not, "Choose another cell, or have this one calibrated.");
        return FrictionLoop.Of(loops) switch
        {
            FrictionLoop.TooFew few => ActAnswer.Refuse("loops", $"{few.Loops} loops: that says nothing of how well the friction is known.", $"Load up and down {FrictionLoop.FewestLoops} times or more."),
            FrictionLoop.NotAgainstMotion wrong => ActAnswer.Refuse("loops", $"Loop {wrong.Loop} reads no more on the way down than on the way up.", "Friction holds the ram back both ways, so the force on the way down is the larger. Look whether the two were swapped, or the pressure was another."),
            _ => await at.WriteAsync(signature, new FrictionLooped(cell, loops)),
        };
    });

    /// <summary>The short report of the last comparison.</summary>
    public async Task<ActAnswer> ReportAsync(Signature signature, JobId id)
    {
        if (await bench.Ledger.FindAsync(signature.Token) is { } sent)
            return ActAnswer.Of(sent);
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened, Comparison: { } compared } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", "No comparison stands.", "Compare the sensor first.");
        var head = await bench.Ledger.HeadAsync();
        var source = new PaperSource(job, shelved.Model, await bench.Ledger.HouseAsync(), head, bench.Clock);
        var number = job.NextReportNumber(ReportKind.SensorCheck);
        return await archive.IssueAsync(id, signature, ReportKind.SensorCheck, number, SensorSheet.Render(SensorSheetFiller.Fill(source, number, compared), source.Size, source.Units), head);
    }

    private Task<ActAnswer> AtProve(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Prove, act);
}
