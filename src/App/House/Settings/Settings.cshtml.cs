using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.House;

namespace Ramwright.App.House.Settings;

/// <summary>What the house decides once for all its jobs.</summary>
public sealed class SettingsPage(Bench bench) : BenchPage(bench)
{
    [BindProperty]
    public SettingsForm Form { get; set; } = new();

    public override Sheet Sheet => new()
    {
        Title = "The house",
        Eyebrow = House.IsSetUp ? "What is decided once for all jobs" : "Not set up yet: these are stand-ins",
        Place = "house",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, PersonField, new("Ledger", $"no. {House.Version}", Less: true), new("Sheet", "settings", Less: true)],
    };

    public static ImmutableArray<Option> Units { get; } = [new("Metric", "metric: bar, mm, N·m"), new("Imperial", "imperial: psi, in, lbf·ft")];

    public static ImmutableArray<Option> Papers { get; } = [new("A4", "A4"), new("Letter", "Letter")];

    public Task<IActionResult> OnPostAsync()
    {
        var settings = Form.Read(House.Settings, Mistakes);
        return TakeAsync(
            async signature => settings is null ? ActAnswer.Refuse(new FormMistakes()) : ActAnswer.Of(await Bench.Ledger.AppendOnceAsync(signature.Token, signature.By, new SettingsChanged(settings))),
            _ => "/house");
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        if (HttpMethods.IsGet(Request.Method) || HttpMethods.IsHead(Request.Method))
            Form = SettingsForm.Of(House.Settings);
        return base.DrawAsync();
    }
}

/// <summary>The form as it was typed.</summary>
public sealed class SettingsForm
{
    public string? Name { get; set; }
    public string? Address { get; set; }
    public string? Letters { get; set; }
    public string? Labour { get; set; }
    public string? Currency { get; set; }
    public string? Tax { get; set; }
    public string? ValidDays { get; set; }
    public string? Units { get; set; }
    public string? Paper { get; set; }

    public static SettingsForm Of(HouseSettings s) => new()
    {
        Name = s.ShopName,
        Address = s.ShopAddress,
        Letters = s.JobLetters,
        Labour = s.LabourPerHour.Amount.ToString("0.##", CultureInfo.InvariantCulture),
        Currency = s.Currency,
        Tax = (s.TaxRate * 100).ToString("0.##", CultureInfo.InvariantCulture),
        ValidDays = s.QuoteValidFor.TotalDays.ToString("0", CultureInfo.InvariantCulture),
        Units = s.Units.ToString(),
        Paper = s.Paper.ToString(),
    };

    /// <summary>The settings, or null with every mistake noted. What the form does not hold stays as it is.</summary>
    public HouseSettings? Read(HouseSettings before, FormMistakes mistakes)
    {
        var name = Name?.Trim() ?? "";
        if (name.Length is 0 or > 80)
            mistakes.Add("Name", "The name of the shop is missing or too long.", "Write up to 80 characters: it stands on every paper.");
        var letters = Letters?.Trim() ?? "";
        if (letters.Length is 0 or > 4 || !letters.All(char.IsAsciiLetterUpper))
            mistakes.Add("Letters", "The letters before job numbers are one to four capitals.", "Such as SM.");
        var currency = Currency?.Trim() ?? "";
        if (currency.Length != 3 || !currency.All(char.IsAsciiLetterUpper))
            mistakes.Add("Currency", "A currency is three capitals.", "As in ISO 4217, such as EUR.");
        var labour = Number(Labour, "Labour", "An hour of labour", 0, 10_000, mistakes);
        var tax = Number(Tax, "Tax", "The tax", 0, 100, mistakes);
        var days = Number(ValidDays, "ValidDays", "How long a quote holds", 1, 366, mistakes);
        if (!Enum.TryParse<UnitSystem>(Units, out var units) || !Enum.IsDefined(units))
            mistakes.Add("Units", "Choose metric or imperial.");
        if (!Enum.TryParse<PaperSize>(Paper, out var paper) || !Enum.IsDefined(paper))
            mistakes.Add("Paper", "Choose A4 or Letter.");
        return mistakes.Count > 0 ? null : before with
        {
            ShopName = name,
            ShopAddress = Address?.Trim() ?? "",
            JobLetters = letters,
            LabourPerHour = new(labour, currency),
            TaxRate = (double)(tax / 100),
            QuoteValidFor = TimeSpan.FromDays(Math.Round((double)days)),
            Units = units,
            Paper = paper,
        };
    }

    private static decimal Number(string? text, string field, string what, decimal least, decimal most, FormMistakes mistakes)
    {
        if (decimal.TryParse((text ?? "").Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        mistakes.Add(field, $"{what} is missing or out of range.", $"Write a number from {least} to {most.ToString("0", CultureInfo.InvariantCulture)}.");
        return least;
    }
}
