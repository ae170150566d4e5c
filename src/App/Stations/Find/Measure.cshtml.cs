using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Diagnosis.Measurements;
using Ramwright.Metrology.Input;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Find;

/// <summary>A stopwatch, a gauge, a clamp: the quick measurements that diagnosis weighs, any other figure, and the full runs as found.</summary>
public sealed class MeasurePage(Bench bench, FindStation station, Diagnosing diagnosing) : StationPage(bench, Station.Find)
{
    private string? asked;

    public string? What { get; private set; }
    public string? Figure { get; private set; }
    public string Unit { get; private set; } = "bar";
    public string? Peaks { get; private set; }
    public string? Instrument { get; private set; }

    /// <summary>Quick measurements that this model can weigh.</summary>
    public ImmutableArray<QuickForm> Quick { get; private set; } = [];

    public DiagnosisView Diagnosis { get; private set; } = null!;

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

    public Task<IActionResult> OnPostQuickAsync(string? measurement)
    {
        asked = measurement;
        var mistakes = new FormMistakes();
        var readings = QuickMeasurement.All.FirstOrDefault(m => m.Id == measurement) is { } known ? ReadQuick(known, mistakes) : [];
        return TakeAsync(
            signature => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.RecordReadingsAsync(signature, Job.Id, readings),
            PageOf(Station.Find));
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

    protected override async Task<IActionResult?> DrawAsync()
    {
        Diagnosis = new(Model, Job.Id, Words, diagnosing.Of(Model, Job, House.Settings.Rates));
        Quick = diagnosing.NetworkOf(Model) is { } network ? [.. network.Measurements.Select(FormOf)] : [];
        return IsHere ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));
    }

    private ImmutableArray<MeasurementRecorded> ReadQuick(QuickMeasurement measurement, FormMistakes mistakes)
    {
        var instrument = Device(Request.Form["with-" + measurement.Id]);
        var read = ImmutableArray.CreateBuilder<MeasurementRecorded>();
        foreach (var reading in measurement.Readings)
        {
            var kind = QuickForm.KindOf(reading);
            var field = "r-" + reading.Name;
            if (Figures.Read(Request.Form[field], QuickForm.UnitOf(kind, Words), field, mistakes) is not { } value)
                continue;
            if (value.Kind != kind || value.Si < 0)
                mistakes.Add(field, $"This is no {kind.ToString().ToLowerInvariant()} from zero up.", $"Such as {reading.Example}.");
            else
                read.Add(new(reading.Meaning, value, instrument, null) { Reading = reading.Name });
        }

        return read.ToImmutable();
    }

    private QuickForm FormOf(QuickMeasurement measurement) => new(
        measurement,
        [.. measurement.Readings.Select(r => new QuickReading(r.Name, r.Meaning, QuickForm.UnitOf(QuickForm.KindOf(r), Words), asked == measurement.Id ? (string?)Request.Form["r-" + r.Name] : null))],
        measurement.Readings.All(r => Job.Measurements.Any(m => m.What.Reading == r.Name)),
        asked == measurement.Id);

    private InstrumentId? Device(string? text) => InstrumentId.TryParse(text, out var id) && House.Find(id) is not null ? id : null;
}

/// <summary>A reading as a field.</summary>
public sealed record QuickReading(string Name, string Meaning, string Unit, string? Value);

/// <summary>A quick measurement as a form.</summary>
/// <param name="Taken">All its readings stand in the job.</param>
/// <param name="Open">Shown open: it was refused just now.</param>
public sealed record QuickForm(QuickMeasurement Measurement, ImmutableArray<QuickReading> Readings, bool Taken, bool Open)
{
    public static MeasuredKind KindOf(ReadingName reading) => reading.Dimension switch
    {
        Dimension.Pressure => MeasuredKind.Pressure,
        Dimension.Time => MeasuredKind.Time,
        Dimension.Current => MeasuredKind.Current,
        Dimension.Voltage => MeasuredKind.Voltage,
        null => MeasuredKind.Count,
        var other => throw new InvalidOperationException($"A reading of {other} has no field."),
    };

    public static string UnitOf(MeasuredKind kind, Words words) => kind switch
    {
        MeasuredKind.Pressure => words.PressureUnit,
        MeasuredKind.Time => "s",
        MeasuredKind.Current => "A",
        MeasuredKind.Voltage => "V",
        _ => "pieces",
    };
}
