using System.Collections.Immutable;
using Ramwright.Planning.Strip.Ways;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>Finds the cheapest way to free what is asked for.</summary>
/// <remarks>
/// The cost is labour (steps, taking up another tool, turning the work), what goes in new (each part once, price × count), and risk (chance ×
/// price × count of the parts that a way may damage). A part goes in new when a way destroys it, whatever its rule; when it comes off or a
/// way disturbs it, if its rule is <c>when-disturbed</c> or <c>always</c>; and when it is laid open, if its rule is <c>always</c>. A price that the model does not give counts as nothing. Prices
/// are taken in the currency of the labour rate. Isolating states come before all that can wait for them.
/// </remarks>
public static class StripPlanner
{
    /// <exception cref="ArgumentException">A target that the model does not have: a bug in the caller.</exception>
    public static StripAnswer Plan(StripJob job)
    {
        if (job.StateLimit < 1 || job.Rates.LabourPerHour.Amount < 0)
            throw new ArgumentException("The state limit is 1 or more, the labour rate zero or more.", nameof(job));
        var ways = new EffectiveWays(job.Model);
        foreach (var target in job.Targets)
        {
            if (!ways.Of.ContainsKey(target))
                throw new ArgumentException($"The model has no part or state '{target}'.", nameof(job));
        }

        var done = new HashSet<NodeId>(job.Done.Concat(ways.Given));
        var reached = Reach.From(ways, done);
        ImmutableArray<NodeId> beyond = [.. job.Targets.Where(t => !reached.Contains(t)).Distinct()];
        if (beyond is not [])
            return new StripAnswer.NoWay([.. beyond.Select(t => Reach.Explain(ways, reached, t))]);

        var graph = WayGraphBuilder.Build(job, ways, done, reached);
        var found = graph.Count == 0 ? new WayPlan([], 0, 0, 0) : WaySearch.Solve(graph, job.StateLimit);
        ImmutableArray<EffectiveWay> order =
            [.. found.Order.Select(o => ways.Of[graph.Nodes[o.Node]].First(w => w.Index == graph.Ways[o.Node][o.Way].Index))];
        return new StripAnswer.Planned(new StripPlanWriter(job, ways).Write(order, found));
    }
}
