using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>The lines of a quote that hang on inspections.</summary>
/// <param name="Lines">One per inspection whose bad outcome would add something.</param>
/// <param name="Unpriced">Parts that such an outcome adds and that have no price.</param>
/// <param name="AllAtOnce">What all bad outcomes together would add, in the currency of the quote: a spare that several lines count on is bought for the second.</param>
internal sealed record Conditional(ImmutableArray<ConditionalLine> Lines, ImmutableArray<NeedLine> Unpriced, decimal AllAtOnce);

/// <summary>Works out what each bad outcome would add to the firm part: parts by the difference of two cheapest covers, labour by planning on from the open tool.</summary>
internal sealed class ConditionalLines(
    ServiceModel model, StripPlan strip, RebuildPlan? rebuild, PriceSettings settings, QuoteOptions options, ImmutableArray<NeedLine> firmNeeds, Cover firmCover)
{
    private readonly Rates _rates = options.Rates ?? new() { LabourPerHour = settings.LabourPerHour };
    private readonly CoverOptions _buying = options.Cover with { Currency = settings.LabourPerHour.Currency };
    private readonly ImmutableHashSet<NodeId> _done = options.DoneBefore.Union(strip.Steps.Select(s => s.Node));

    public Conditional All()
    {
        var lines = ImmutableArray.CreateBuilder<ConditionalLine>();
        var unpriced = new Dictionary<NodeId, NeedLine>();
        var together = new Dictionary<NodeId, int>();
        var labour = Money.Zero(settings.LabourPerHour.Currency);
        foreach (var passed in strip.Inspections)
        {
            if (model.FindPart(passed.Part) is not { } part || part.Inspections.FirstOrDefault(i => i.Id == passed.Inspection) is not { } inspection)
                continue;
            var added = Added(part, inspection);
            if (added.Renewals.Count == 0 && added.Time <= TimeSpan.Zero)
                continue;
            var cover = CoverWith(added.Renewals);
            foreach (var missing in cover.Unpriced.Where(n => added.Renewals.ContainsKey(n.Part)))
                unpriced.TryAdd(missing.Part, missing);
            foreach (var (id, count) in added.Renewals)
                together[id] = Math.Max(count, together.GetValueOrDefault(id));
            var line = new ConditionalLine(passed.Inspection, passed.Part, Text(part, added.Renewals.Keys), inspection.ChanceBad, Dearer(cover), FirmLines.Labour(added.Time, settings));
            labour += line.Labour;
            lines.Add(line);
        }
        return new(lines.ToImmutable(), [.. unpriced.Values], Dearer(CoverWith(together)).Amount + labour.Amount);
    }

    /// <summary>Parts renewed beyond the firm ones, and the time beyond the plan.</summary>
    private (Dictionary<NodeId, int> Renewals, TimeSpan Time) Added(Part part, Inspection inspection)
    {
        var renews = (inspection.RenewsWhenBad is [] ? [part.Id] : inspection.RenewsWhenBad).ToHashSet();
        var further = Further([.. inspection.AddsWhenBad.Concat(renews).Distinct().Where(id => !_done.Contains(id))]);
        var added = new Dictionary<NodeId, int>();
        foreach (var id in renews)
            Add(id, model.FindPart(id)?.Count ?? 0);
        foreach (var renewal in further?.Renewals ?? [])
            Add(renewal.Part, renewal.Count);
        return (added, further is null ? TimeSpan.Zero : further.LikelyTime + FirmLines.InspectionTime(model, further) + BackTogether(further));

        void Add(NodeId id, int count)
        {
            var more = count - strip.Renewals.Where(r => r.Part == id).Select(r => r.Count).DefaultIfEmpty(0).Max();
            if (more > 0)
                added[id] = Math.Max(more, added.GetValueOrDefault(id));
        }
    }

    /// <summary>The plan for what must come off too, from the tool as the firm plan leaves it; null when nothing must or nothing can.</summary>
    private StripPlan? Further(ImmutableArray<NodeId> targets)
    {
        targets = [.. targets.Where(id => model.FindPart(id) is not null || model.FindState(id) is not null)];
        for (var tries = 0; tries < 2 && targets is not []; tries++)
        {
            var job = new StripJob { Model = model, Rates = _rates, Targets = targets, Done = _done, RenewalsOwed = [.. strip.Renewals.Select(r => r.Part)] };
            switch (StripPlanner.Plan(job))
            {
                case StripAnswer.Planned planned:
                    return planned.Plan;
                case StripAnswer.NoWay none:
                    targets = targets.RemoveRange(none.Targets.Select(t => t.Target));
                    break;
            }
        }
        return null;
    }

    /// <summary>How much longer the rebuild takes with more off; the strip time once more where no rebuild can be planned.</summary>
    private TimeSpan BackTogether(StripPlan further)
    {
        var job = new RebuildJob { Model = model, Rates = _rates, Done = _done.Union(further.Steps.Select(s => s.Node)), Renewals = [.. strip.Renewals, .. further.Renewals] };
        return rebuild is not null && RebuildPlanner.Plan(job) is RebuildAnswer.Planned longer
            ? TimeSpan.FromTicks(Math.Max(0, (longer.Plan.LikelyTime - rebuild.LikelyTime).Ticks))
            : further.LikelyTime;
    }

    private Cover CoverWith(Dictionary<NodeId, int> added)
    {
        var counts = firmNeeds.ToDictionary(n => n.Part, n => n.Count);
        foreach (var (id, count) in added)
            counts[id] = counts.GetValueOrDefault(id) + count;
        return CheapestCover.Of(model, PartsNeed.Of(model, counts), _buying);
    }

    private Money Dearer(Cover cover) => new Money(Math.Max(0, cover.Price.Amount - firmCover.Price.Amount), cover.Price.Currency).Rounded();

    private string Text(Part part, IEnumerable<NodeId> renewed)
    {
        var names = model.Parts.Where(p => renewed.Contains(p.Id)).Select(p => p.Name).ToList();
        return names.Count == 0 ? $"{part.Name}: more to open" : $"if {part.Name} is not fit for use: renew {string.Join(", ", names)}";
    }
}
