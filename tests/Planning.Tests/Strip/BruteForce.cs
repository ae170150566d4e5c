using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests.Strip;

/// <summary>Every order and every way, straight from the model: the least cost, or null where the targets cannot be freed.</summary>
/// <remarks>Shares nothing with the planner: no graph, no bound, no dominance, no relevance. Only what is dearer than the best so far, or
/// than the same state met before (parts off, renewals owed, tool, posture), is dropped.</remarks>
internal sealed class BruteForce
{
    private readonly StripJob job;
    private readonly NodeId[] nodes;
    private readonly Dictionary<(int Done, int Owed, ToolId?, PostureId?), decimal> met = [];
    private decimal? best;

    private BruteForce(StripJob job) =>
        (this.job, nodes) = (job, [.. job.Model.States.Select(s => s.Id), .. job.Model.Parts.Select(p => p.Id)]);

    public static decimal? LeastCost(StripJob job)
    {
        var all = new BruteForce(job);
        ImmutableHashSet<NodeId> done = [.. job.Done, .. job.Model.States.Where(s => s.Reach is null).Select(s => s.Id)];
        all.Try(done, job.RenewalsOwed, job.ToolInHand, job.Posture, 0m);
        return all.best;
    }

    private void Try(ImmutableHashSet<NodeId> done, ImmutableHashSet<NodeId> owed, ToolId? tool, PostureId? posture, decimal cost)
    {
        var now = (Bits(done), Bits(owed), tool, posture);
        if (cost >= best || (met.TryGetValue(now, out var before) && before <= cost))
            return;
        met[now] = cost;
        if (job.Targets.All(done.Contains))
        {
            best = cost;
            return;
        }

        foreach (var state in job.Model.States.Where(s => !done.Contains(s.Id) && s.Reach!.Needs.All(done.Contains) && Isolated(s.Id, done)))
        {
            var laidOpen = LaidOpen(done, done.Add(state.Id)).Except(owed).ToImmutableHashSet();
            Try(done.Add(state.Id), owed.Union(laidOpen), state.Reach!.Tool ?? tool, state.Reach.Posture ?? posture,
                cost + Labour(state.Reach.Time, state.Reach.Tool, state.Reach.Posture, tool, posture) + laidOpen.Sum(Price));
        }

        foreach (var part in job.Model.Parts.Where(p => !done.Contains(p.Id) && Isolated(p.Id, done)))
        {
            foreach (var way in part.WaysOff.Where(w => w.Needs.All(done.Contains)))
            {
                var renews = way.Destroys.Concat(way.Disturbs.Append(part.Id).Where(RenewedByRule)).Concat(LaidOpen(done, done.Add(part.Id))).Except(owed).ToImmutableHashSet();
                var risk = way.Risk is null ? 0m : (decimal)way.Risk.Chance * way.Risk.Damages.Sum(Price);
                Try(done.Add(part.Id), owed.Union(renews), way.Tool ?? tool, way.Posture ?? posture,
                    cost + Labour(way.Time, way.Tool, way.Posture, tool, posture) + renews.Sum(Price) + risk);
            }
        }
    }

    private int Bits(ImmutableHashSet<NodeId> some) => nodes.Select((node, i) => some.Contains(node) ? 1 << i : 0).Sum();

    /// <summary>Parts always renewed that can come off now and could not before, unless making the tool safe was all that they waited for.</summary>
    private IEnumerable<NodeId> LaidOpen(ImmutableHashSet<NodeId> before, ImmutableHashSet<NodeId> after)
    {
        bool Open(Part part, WayOff way, ImmutableHashSet<NodeId> done) => way.Needs.All(done.Contains) && Isolated(part.Id, done);
        bool Inside(NodeId need) => job.Model.FindState(need) is not { } state || state is { Isolates: false, Reach: not null };
        return from part in job.Model.Parts
               where part.Renew is RenewalRule.Always && !after.Contains(part.Id)
               where part.WaysOff.Any(w => w.Needs.Any(Inside) && Open(part, w, after) && !Open(part, w, before))
               select part.Id;
    }

    /// <summary>Isolating states come before all but themselves and what they may themselves wait for.</summary>
    private bool Isolated(NodeId node, ImmutableHashSet<NodeId> done)
    {
        var isolating = job.Model.States.Where(s => s.Isolates && s.Reach is not null).Select(s => s.Id).ToList();
        var exempt = isolating.ToHashSet();
        for (var before = 0; before != exempt.Count;)
        {
            before = exempt.Count;
            foreach (var id in exempt.ToList())
            {
                exempt.UnionWith(job.Model.FindState(id)?.Reach?.Needs ?? []);
                exempt.UnionWith(job.Model.FindPart(id)?.WaysOff.SelectMany(w => w.Needs) ?? []);
            }
        }

        return exempt.Contains(node) || isolating.All(done.Contains);
    }

    private decimal Labour(TimeSpan time, ToolId? tool, PostureId? posture, ToolId? toolBefore, PostureId? postureBefore)
    {
        if (tool is { } t && t != toolBefore)
            time += job.Model.Tools.FirstOrDefault(x => x.Id == t)?.Change ?? job.Rates.ToolChange;
        if (posture is { } p && p != postureBefore)
            time += job.Model.Postures.FirstOrDefault(x => x.Id == p)?.Change ?? job.Rates.PostureChange;
        return job.Rates.CostOf(time).Amount;
    }

    private bool RenewedByRule(NodeId id) => job.Model.FindPart(id)?.Renew is RenewalRule.Always or RenewalRule.WhenDisturbed;

    private decimal Price(NodeId id) => job.Model.FindPart(id) is { Price: { } price } part ? part.Count * price.Amount : 0m;
}
