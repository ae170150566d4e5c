using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>The lines of a quote that hang on inspections.</summary>
/// <param name="Lines">What a bad outcome would add; inspections of one part that come to the same share a line.</param>
/// <param name="Unpriced">Parts that such an outcome adds and that have no price.</param>
/// <param name="AllAtOnce">
/// What all bad outcomes together would add, in the currency of the quote, and so the most that any of them can: each part once, each way further
/// in once, and a spare that two lines count on bought for the second.
/// </param>
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
        var outcomes = strip.Inspections.Select(Bad).OfType<BadOutcome>().Where(o => o.Renewals.Count > 0 || o.Time > TimeSpan.Zero).ToList();
        var covers = outcomes.Select(o => CoverWith(o.Renewals)).ToList();
        var together = outcomes.SelectMany(o => o.Renewals).GroupBy(r => r.Key).ToDictionary(g => g.Key, g => g.Max(r => r.Value));
        // Opening further for the same parts is work done once, however many inspections ask for it.
        var labour = outcomes.DistinctBy(o => o.Opens, StringComparer.Ordinal).Sum(o => FirmLines.Labour(o.Time, settings).Amount);
        return new(
            [.. outcomes.Zip(covers).GroupBy(x => x.First.Effect, StringComparer.Ordinal).Select(same => Line([.. same.Select(x => x.First)], same.First().Second))],
            [.. covers.Zip(outcomes).SelectMany(x => x.First.Unpriced.Where(n => x.Second.Renewals.ContainsKey(n.Part))).DistinctBy(n => n.Part)],
            Dearer(CoverWith(together)).Amount + labour);
    }

    /// <summary>What a bad outcome brings with it: parts beyond the firm ones, time beyond the plan, and for which parts the tool is opened further.</summary>
    private sealed record BadOutcome(Part Part, Inspection Inspection, Dictionary<NodeId, int> Renewals, TimeSpan Time, string Opens)
    {
        /// <summary>The same for outcomes that come to the same thing.</summary>
        public string Effect => $"{Part.Id} {Opens} {string.Join(' ', Renewals.OrderBy(r => r.Key.Value, StringComparer.Ordinal).Select(r => $"{r.Value} {r.Key}"))}";
    }

    /// <summary>One line for all inspections of a part that come to the same; the chance is that of at least one bad outcome, taken as independent.</summary>
    private ConditionalLine Line(List<BadOutcome> same, Cover cover)
    {
        var first = same[0];
        var chance = same.Count == 1 ? first.Inspection.ChanceBad
            : same.TrueForAll(o => o.Inspection.ChanceBad is not null) ? 1 - same.Aggregate(1.0, (sound, o) => sound * (1 - o.Inspection.ChanceBad!.Value))
            : null;
        return new(first.Inspection.Id, first.Part.Id, Text(first.Part, first.Renewals.Keys), chance, Dearer(cover), FirmLines.Labour(first.Time, settings));
    }

    private BadOutcome? Bad(PassedInspection passed)
    {
        if (model.FindPart(passed.Part) is not { } part || part.Inspections.FirstOrDefault(i => i.Id == passed.Inspection) is not { } inspection)
            return null;
        var renews = (inspection.RenewsWhenBad is [] ? [part.Id] : inspection.RenewsWhenBad).ToHashSet();
        ImmutableArray<NodeId> targets = [.. inspection.AddsWhenBad.Concat(renews).Distinct().Where(id => !_done.Contains(id)).OrderBy(id => id.Value, StringComparer.Ordinal)];
        var further = Further(targets);
        var added = new Dictionary<NodeId, int>();
        foreach (var (id, count) in renews.Select(id => (id, model.FindPart(id)?.Count ?? 0)).Concat((further?.Renewals ?? []).Select(r => (r.Part, r.Count))))
        {
            var more = count - strip.Renewals.Where(r => r.Part == id).Select(r => r.Count).DefaultIfEmpty(0).Max();
            if (more > 0)
                added[id] = Math.Max(more, added.GetValueOrDefault(id));
        }
        var time = further is null ? TimeSpan.Zero : further.LikelyTime + FirmLines.InspectionTime(model, further) + BackTogether(further);
        return new(part, inspection, added, time, string.Join(' ', targets));
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
        return names switch
        {
            [] => $"{part.Name}: more to open",
            [var only] when only == part.Name => $"{only}, where it is not fit for use",
            _ => $"{part.Name} not fit for use: renew {string.Join(", ", names)}",
        };
    }
}
