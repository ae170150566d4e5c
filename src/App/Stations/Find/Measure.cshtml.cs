using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Find;

/// <summary>A stopwatch, a gauge, a clamp: one figure at a time; and the full runs as found.</summary>
public sealed class MeasurePage(Bench bench, FindStation station) : StationPage(bench, Station.Find)
{
    public string? What { get; private set; }
    public string? Figure { get; private set; }
    public string Unit { get; private set; } = "bar";
    public string? Peaks { get; private set; }
    public string? Instrument { get; private set; }

    public static ImmutableArray<string> Usual { get; } =
        ["pressure left after one minute", "time of a full stroke", "time of the ram going back", "current while pressing", "current while running free", "voltage of the pack under load", "stroke of the ram", "temperature of the oil"];

    public ImmutableArray<Option> Instruments =>
        [new("", "none of the house's"), .. House.InstrumentsById.Values.Where(i => i.Facts.InUse).Select(i => new Option(i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}"))];

    public ImmutableArray<Option> UnitOptions => [.. Figures.Units.Select(u => new Option(u.Symbol, u.Symbol))];

    protected override string Title => "Measure";

    protected override string Eyebrow => "Find · one figure at a time, simple means first";

    public Task<IActionResult> OnPostAsync(string? what, string? figure, string? unit, string? instrument)
    {
        (What, Figure, Unit, Instrument) = (what, figure, unit ?? "bar", instrument);
        var mistakes = new FormMistakes();
        var value = Figures.Read(figure, Unit, "figure", mistakes);
        return TakeAsync(
            signature => value is { } read ? station.RecordMeasurementAsync(signature, Job.Id, what, read, Device(instrument), null) : Task.FromResult(ActAnswer.Refuse(mistakes)),
            PageOf(Station.Find) + "/measure");
    }

    public Task<IActionResult> OnPostAsFoundAsync(string? peaks, string? gauge)
    {
        Peaks = peaks;
        var mistakes = new FormMistakes();
        var read = Figures.ReadPressures(peaks, Words.PressureUnit, "peaks", mistakes);
        return TakeAsync(
            signature => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.RecordAsFoundAsync(signature, Job.Id, read, Device(gauge)),
            PageOf(Station.Find) + "/measure");
    }

    protected override async Task<IActionResult?> DrawAsync() => IsHere ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));

    private InstrumentId? Device(string? text) => InstrumentId.TryParse(text, out var id) && House.Find(id) is not null ? id : null;
}
