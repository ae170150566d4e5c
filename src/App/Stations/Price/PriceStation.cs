using System.Collections.Immutable;
using Ramwright.App.Papers;
using Ramwright.App.Stations.Plan;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Price;

/// <summary>What happens at Price: a price is named on paper, and the customer says yes or no.</summary>
public sealed class PriceStation(Bench bench, PaperArchive archive)
{
    /// <summary>The quote from where the job stands; without a strip plan, setting and proving alone.</summary>
    public static Quote Propose(ServiceModel model, JobState job, HouseSettings settings)
    {
        var rates = settings.Rates;
        var strip = job.Targets is { What.Parts.IsEmpty: true } ? null : job.Strip;
        var start = strip?.Planned.What.Start.ToImmutableHashSet() ?? [];
        var rebuild = strip is null ? null : PlanStation.Rebuild(model, strip.Plan, start, rates);
        return QuoteMaker.Make(model, strip?.Plan, rebuild, settings.Prices, new QuoteOptions
        {
            Rates = rates,
            DoneBefore = start,
            Cover = new CoverOptions { Currency = settings.Currency },
        });
    }

    /// <summary>Names the price: the quote is printed and stands in the ledger with its figures.</summary>
    public async Task<ActAnswer> NameAsync(Signature signature, JobId id)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        var house = await bench.Ledger.HouseAsync();
        var quote = Propose(shelved.Model, job, house.Settings);
        var until = bench.Today.AddDays((int)Math.Ceiling(house.Settings.QuoteValidFor.TotalDays));
        var made = ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen, new QuoteMade(job.NextQuoteNumber(), quote, quote.Cover, until)));
        if (made is not ActAnswer.Done || await bench.Ledger.ReadAsync(id) is not { } after)
            return made;
        var head = await bench.Ledger.HeadAsync();
        var source = new PaperSource(after, shelved.Model, house, head, bench.Clock);
        var pdf = QuoteSheet.Render(PaperFiller.Quote(source), source.Size, source.Units);
        return await archive.IssueAsync(id, signature.ForPart(2), ReportKind.Quote, after.NextReportNumber(ReportKind.Quote), pdf, head);
    }

    /// <summary>The customer's yes or no to the quote that stands. A no leads to the end of the job, where it is said how it ends.</summary>
    /// <param name="limit">A sum before tax that the customer set; null: as quoted.</param>
    public async Task<ActAnswer> AnswerAsync(Signature signature, JobId id, bool accepted, string? who, Money? limit, string? note)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", $"There is no job {id}.");
        if (job.Quote is null)
            return ActAnswer.Refuse("", "No price was named yet.", "Name a price first.");
        if (string.IsNullOrWhiteSpace(who))
            return ActAnswer.Refuse("who", "Say who answered at the customer’s.", "A name, and how: by telephone, in writing, at the counter.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, id, signature.Seen,
            new QuoteAnswered(accepted, who.Trim(), accepted ? limit : null, string.IsNullOrWhiteSpace(note) ? null : note.Trim()),
            accepted
                ? new StationReached(StationOrder.After(shelved.Level, job, Station.Price), null)
                : new StationReached(Station.Release, "the customer said no to the price")));
    }
}
