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

    /// <summary>Names the price: the quote stands in the ledger with its figures, then its paper is printed.</summary>
    /// <remarks>
    /// The paper carries the head of the entry it stands on, so the entry comes first. Where the paper then fails (a full disk), the quote stands without it;
    /// the same form sent again finds the quote written and issues the paper that is missing, under the same numbers.
    /// </remarks>
    public async Task<ActAnswer> NameAsync(Signature signature, JobId id)
    {
        var made = await JobAtBench.ActAsync(bench, signature, id, Station.Price, async at =>
        {
            var settings = (await bench.Ledger.HouseAsync()).Settings;
            var quote = Propose(at.Model, at.Job, settings);
            var until = bench.Today.AddDays((int)Math.Ceiling(settings.QuoteValidFor.TotalDays));
            return await at.WriteAsync(signature, new QuoteMade(at.Job.NextQuoteNumber(), quote, quote.Cover, until));
        });
        if (made is not ActAnswer.Done)
            return made;
        var paper = signature.ForPart(2);
        return await bench.Ledger.FindAsync(paper.Token) is { } issued ? ActAnswer.Of(issued) : await IssueAsync(paper, id);
    }

    /// <summary>The customer's yes or no to the quote that stands. A no leads to the end of the job, where it is said how it ends.</summary>
    /// <param name="limit">A sum before tax that the customer set; null: as quoted.</param>
    public Task<ActAnswer> AnswerAsync(Signature signature, JobId id, bool accepted, string? who, Money? limit, string? note) => JobAtBench.ActAsync(bench, signature, id, Station.Price, at =>
    {
        if (at.Job.Quote is null)
            return Task.FromResult(ActAnswer.Refuse("", "No price was named yet.", "Name a price first."));
        if (string.IsNullOrWhiteSpace(who))
            return Task.FromResult(ActAnswer.Refuse("who", "Say who answered at the customer’s.", "A name, and how: by telephone, in writing, at the counter."));
        return at.WriteAsync(signature,
            new QuoteAnswered(accepted, who.Trim(), accepted ? limit : null, string.IsNullOrWhiteSpace(note) ? null : note.Trim()),
            accepted
                ? new StationReached(StationOrder.After(at.Shelved.Level, at.Job, Station.Price), null)
                : new StationReached(Station.Release, "the customer said no to the price"));
    });

    private async Task<ActAnswer> IssueAsync(Signature signature, JobId id)
    {
        var job = await bench.Ledger.ReadAsync(id) ?? throw new InvalidOperationException("The job was just read.");
        var model = bench.Models.Find(job.Opened!.What.ModelId)!.Model;
        var head = await bench.Ledger.HeadAsync();
        var source = new PaperSource(job, model, await bench.Ledger.HouseAsync(), head, bench.Clock);
        var pdf = QuoteSheet.Render(PaperFiller.Quote(source), source.Size, source.Units);
        return await archive.IssueAsync(id, signature, ReportKind.Quote, job.NextReportNumber(ReportKind.Quote), pdf, head);
    }
}
