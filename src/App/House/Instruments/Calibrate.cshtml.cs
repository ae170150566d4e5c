using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
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

    /// <summary>The instrument of the address is there already: its facts stand in the form.</summary>
    protected override Task<IActionResult?> DrawAsync()
    {
        if (Form.Id is null && InstrumentId.TryParse(Request.Query["id"], out var id) && House.Find(id) is { } known)
            Form = CalibrationForm.Of(known);
        return base.DrawAsync();
    }

    public static ImmutableArray<Option> AsFounds { get; } = [new("", "not known, or the first"), new("within", "within what was promised"), new("off", "off by more than was promised")];

    public static ImmutableArray<Option> Curves { get; } = [new("straight", "a straight line"), new("quadratic", "a parabola, where the certificate gives a reason")];

    public static ImmutableArray<Option> Adjustments { get; } = [new("", "not known"), new("no", "no: left as found"), new("yes", "yes")];

    public Task<IActionResult> OnPostAsync()
    {
        var events = Form.Read(House, Mistakes);
        return TakeAsync(
            async signature => events is null ? ActAnswer.Refuse(new FormMistakes()) : ActAnswer.Of(await Bench.Ledger.AppendOnceAsync(signature.Token, signature.By, events)),
            _ => "/instruments");
    }
}
