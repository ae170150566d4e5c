using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.House.Instruments;

/// <summary>An instrument is registered, or its new certificate written down.</summary>
public sealed class CalibratePage(Bench bench) : BenchPage(bench)
{
    [BindProperty]
    public CalibrationForm Form { get; set; } = new();

    public override Sheet Sheet => new()
    {
        Title = "Register or calibrate",
        Eyebrow = "Instruments · from the certificate, as it stands there",
        Place = "instruments",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, PersonField, new("Sheet", "calibration", Less: true)],
    };

    public static ImmutableArray<Option> Kinds { get; } = [.. Enum.GetValues<InstrumentKind>().Select(k => new Option(k.ToString(), Sentence.Head(InstrumentsPage.KindWord(k))))];

    public static ImmutableArray<Option> Units { get; } = [.. Figures.Units.Select(u => new Option(u.Symbol, u.Symbol))];

    public Task<IActionResult> OnPostAsync()
    {
        var events = Form.Read(Mistakes);
        return TakeAsync(
            async signature => events is null ? ActAnswer.Refuse(new FormMistakes()) : ActAnswer.Of(await Bench.Ledger.AppendOnceAsync(signature.Token, signature.By, events)),
            _ => "/instruments");
    }
}

/// <summary>The form as it was typed.</summary>
public sealed class CalibrationForm
{
    public string? Id { get; set; }
    public string? Name { get; set; }
    public string? Kind { get; set; }
    public string? On { get; set; }
    public string? Due { get; set; }
    public string? Certificate { get; set; }
    public string? Laboratory { get; set; }
    public string? Expanded { get; set; }
    public string? Unit { get; set; } = "bar";

    /// <summary>The events, or null with every mistake noted.</summary>
    public IReadOnlyList<HouseEvent>? Read(FormMistakes mistakes)
    {
        if (!InstrumentId.TryParse(Id?.Trim(), out var id))
            mistakes.Add("Id", "The inventory number is missing or cannot be one.", $"Write {InstrumentId.Form}, such as FC-2.");
        if (string.IsNullOrWhiteSpace(Name))
            mistakes.Add("Name", "Say what it is called in the house.", "Such as: force cell 100 kN.");
        if (!Enum.TryParse<InstrumentKind>(Kind, out var kind) || !Enum.IsDefined(kind))
            mistakes.Add("Kind", "Choose its kind.");
        var on = Day(On, "On", "The day of calibration", mistakes);
        var due = Day(Due, "Due", "The last day on which it is relied on", mistakes);
        if (on is { } from && due is { } to && to <= from)
            mistakes.Add("Due", "The last day is not after the day of calibration.", "Look at the certificate again.");
        if (string.IsNullOrWhiteSpace(Certificate))
            mistakes.Add("Certificate", "The number of the certificate is missing.");
        if (string.IsNullOrWhiteSpace(Laboratory))
            mistakes.Add("Laboratory", "Say who calibrated it.");
        var expanded = Figures.Read(Expanded, Unit ?? "bar", "Expanded", mistakes);
        if (expanded is { Si: <= 0 })
            mistakes.Add("Expanded", "The uncertainty is not above zero.", "Write U with k = 2 as the certificate states it.");
        return mistakes.Count > 0 ? null :
        [
            new InstrumentRegistered(id, Name!.Trim(), kind, expanded!.Value.Kind),
            new InstrumentCalibrated(id, on!.Value, due!.Value, Certificate!.Trim(), Laboratory!.Trim(), expanded.Value),
        ];
    }

    private static DateOnly? Day(string? text, string field, string what, FormMistakes mistakes)
    {
        if (DateOnly.TryParseExact(text?.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return day;
        mistakes.Add(field, $"{what} is missing or is no day.", "Write it as 2026-08-27.");
        return null;
    }
}
