using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Records.Events;
using Ramwright.Records.House;

namespace Ramwright.App.Stations.Prove;

/// <summary>The tool's own pressure sensor is compared with a reference, as after it was replaced; only then its memory may prove the tool.</summary>
public sealed class ComparePage(Bench bench, ReferenceStation station) : StationPage(bench, Station.Prove)
{
    public ComparisonForm Form { get; private set; } = new();

    public SensorAnswer? Answer => Job.Comparison?.What.Examine();

    public ImmutableArray<Option> Gauges =>
    [
        .. DeviceChoice.Instruments(House).Where(i => i.Facts.Kind is InstrumentKind.PortGauge or InstrumentKind.PeakHoldGauge)
            .Select(i => new Option(i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}{(DeviceFit.WhyNot(i, Bench.Today) is null ? "" : ", may not be relied on")}")),
    ];

    public IEnumerable<string> Reports => Job.Reports.Where(r => r.What.Kind == ReportKind.SensorCheck).Select(r => r.What.Number);

    public IEnumerable<(string Reference, string Tool, string Off)> Rows => Job.Comparison is not { } compared ? [] : compared.What.Points
        .Select(p => (Shown(p.Reference), Shown(p.Reading) + (p.Rising ? "" : ", down"), Shown(p.Reading - p.Reference)));

    public Facts Found
    {
        get
        {
            if (Answer is not { } answer || SensorText.Figures(answer) is not { } f)
                return Facts.Of();
            return Facts.Of(
                new Fact("Worst level", Shown(f.WorstError), string.Create(CultureInfo.InvariantCulture, $"{Shown(Job.Comparison!.What.Allowed.Pascals)} allowed")),
                new Fact("Known to", "± " + Shown(f.Expanded), "k = 2, with the reference"),
                new Fact("Zero", Shown(f.Zero)),
                new Fact("Gain", f.Gain.ToString("0.0000", CultureInfo.InvariantCulture)),
                new Fact("Off the line", Shown(f.NonLinearity)),
                new Fact("Hysteresis", f.Hysteresis is { } h ? Shown(h) : "taken from one side alone"),
                new Fact("Repeats", Shown(f.Repeatability), "standard deviation"));
        }
    }

    protected override string Title => "Compare the tool's sensor";

    protected override string Eyebrow => $"Prove · limits {Words.Show(Model.Limits.Pressure)}";

    public Task<IActionResult> OnPostCompareAsync(ComparisonForm form)
    {
        Form = form;
        var mistakes = new FormMistakes();
        var wish = form.Read(Words, mistakes);
        return TakeAsync(s => wish is null ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.CompareAsync(s, Job.Id, wish), $"/jobs/{Job.Id}/prove/compare");
    }

    public Task<IActionResult> OnPostReportAsync() => TakeAsync(s => station.ReportAsync(s, Job.Id), $"/jobs/{Job.Id}/prove/compare");

    protected override Task<IActionResult?> DrawAsync()
    {
        Form.Allowed ??= QuantityOf(0.01 * Model.Limits.Nominal); // one per cent is common practice for such a sensor
        return base.DrawAsync();
    }

    private string QuantityOf(Pressure p) => Metrology.Text.QuantityText.Parts(p, Words.System, 0).Number.Replace(",", "", StringComparison.Ordinal);

    private string Shown(double pascals) => Words.Show(Pressure.FromPascals(pascals));
}
