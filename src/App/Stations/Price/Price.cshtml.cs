using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Price;

/// <summary>A firm price, what may come on top, and the sum not to be exceeded; then the customer's answer.</summary>
public sealed class PricePage(Bench bench, PriceStation station) : StationPage(bench, Station.Price)
{
    public Quote Quote { get; private set; } = null!;

    /// <summary>The price as it was named; null while it is only a proposal.</summary>
    public QuoteState? Named => Job.Quote;

    public bool IsAnswered => Job.Quote?.Answer is not null;

    public string? Who { get; private set; }
    public string? Limit { get; private set; }
    public string? Note { get; private set; }

    public ReportIssued? Paper => Job.Reports.LastOrDefault(r => r.What.Kind == ReportKind.Quote)?.What;

    protected override string Title => Named switch
    {
        null => "Name a price",
        { Answer: null } => "Waiting for a yes",
        { Answer.What.Accepted: true } => "The customer said yes",
        _ => "The customer said no",
    };

    protected override string Eyebrow => Named is { } named
        ? $"Price · quote {named.Made.What.Number}, named {At(named.Made.At)}, holds until {Words.Day(named.Made.What.ValidUntil)}"
        : $"Price · labour {Words.Show(House.Settings.LabourPerHour)} an hour, tax {Words.Percent(House.Settings.TaxRate)}";

    public Facts Sums => new(
    [
        new("Firm", Words.Show(Quote.FirmGross), $"{Words.Show(Quote.FirmNet)} before tax"),
        new("Not to exceed", Words.Show(Quote.NotToExceedGross), $"{Words.Show(Quote.NotToExceedNet)} before tax"),
    ]);

    public ImmutableArray<string> Unpriced => [.. Quote.Unpriced.Concat(Quote.UnpricedOnCondition).Select(n => n.Name).Distinct(StringComparer.Ordinal)];

    public Task<IActionResult> OnPostAsync() => TakeAsync(signature => station.NameAsync(signature, Job.Id), PageOf(Station.Price));

    public Task<IActionResult> OnPostYesAsync(string? who, string? limit, string? note)
    {
        (Who, Limit, Note) = (who, limit, note);
        var mistakes = new FormMistakes();
        var sum = ReadLimit(limit, mistakes);
        return TakeAsync(
            signature => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.AnswerAsync(signature, Job.Id, accepted: true, who, sum, note),
            $"/jobs/{Job.Id}/now");
    }

    public Task<IActionResult> OnPostNoAsync(string? who, string? note)
    {
        (Who, Note) = (who, note);
        return TakeAsync(signature => station.AnswerAsync(signature, Job.Id, accepted: false, who, null, note), $"/jobs/{Job.Id}/now");
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        Quote = Named?.Made.What.Quote ?? PriceStation.Propose(Model, Job, House.Settings);
        return base.DrawAsync();
    }

    private Money? ReadLimit(string? text, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        var typed = text.Trim();
        if (decimal.TryParse(typed.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var sum) && sum is > 0 and < 10_000_000)
            return new(sum, House.Settings.Currency);
        mistakes.Add("limit", $"'{(typed.Length > 30 ? typed[..30] : typed)}' is no sum.", $"Write it in {House.Settings.Currency} before tax, such as 480, or leave it empty.");
        return null;
    }
}
