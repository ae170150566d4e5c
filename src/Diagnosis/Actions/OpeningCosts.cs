using System.Collections.Immutable;
using Ramwright.Planning;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Actions;

/// <summary>What it takes to get to some parts from where the tool stands.</summary>
/// <param name="Steps">Bits of the steps, in <see cref="OpeningCosts.Nodes"/>.</param>
/// <param name="Time">Minutes in, steps and changes.</param>
/// <param name="Price">Labour, renewals and risk on the way in.</param>
/// <param name="Renewed">Parts that go in new because of it.</param>
internal sealed record Opening(UInt128 Steps, TimeSpan Time, decimal Price, ImmutableHashSet<NodeId> Renewed);

/// <summary>Costs of opening and closing a tool step by step, from the strip and rebuild planners.</summary>
/// <remarks>
/// Each target is planned alone, from what is open already. Two openings share the steps that both plans hold; a step costs what it costs in the
/// plan in which it is cheapest, way in and way back. A plan made for both at once can only be cheaper, so sums are on the safe side by what a joint way saves.
/// </remarks>
internal sealed class OpeningCosts(ServiceModel model, Rates rates, ImmutableHashSet<NodeId> open)
{
    private readonly List<NodeId> nodes = [];
    private readonly List<decimal> opening = [];
    private readonly List<decimal> closing = [];

    public IReadOnlyList<NodeId> Nodes => nodes;

    /// <summary>By step a number of money units.</summary>
    public double[] OpeningMoney => [.. opening.Select(m => (double)m)];

    /// <summary>By step a number of money units.</summary>
    public double[] ClosingMoney => [.. closing.Select(m => (double)m)];

    /// <summary>Steps that are done at the start.</summary>
    public UInt128 Start { get; private set; }

    /// <summary>Puts what is open at the start among the steps, so that closing it costs.</summary>
    public void TakeStart()
    {
        if (open.IsEmpty)
            return;
        foreach (var node in open)
            Start |= Bit(node);
        Close(open, [], ImmutableDictionary<NodeId, int>.Empty);
    }

    /// <summary>The way to some parts or states; null when nothing frees them.</summary>
    public Opening? To(ImmutableArray<NodeId> targets)
    {
        if (targets.All(open.Contains))
            return new(0, TimeSpan.Zero, 0, []);
        var answer = StripPlanner.Plan(new StripJob { Model = model, Rates = rates, Targets = targets, Done = open });
        if (answer is not StripAnswer.Planned { Plan: var plan } || nodes.Union(plan.Steps.Select(s => s.Node)).Count() > 128)
            return null;
        UInt128 steps = 0;
        foreach (var step in plan.Steps)
        {
            var bit = Bit(step.Node);
            steps |= bit;
            Least(opening, Place(step.Node), rates.CostOf(step.Time + step.ChangeTime).Amount + step.Renewals.Sum(Price) + Risk(step));
        }

        Close(open.Union(plan.Steps.Select(s => s.Node)), plan.Renewals, plan.Steps.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value));
        return new(steps, plan.LikelyTime, plan.Cost.Amount, [.. plan.Renewals.Select(r => r.Part)]);
    }

    private void Close(ImmutableHashSet<NodeId> done, ImmutableArray<Renewal> renewals, ImmutableDictionary<NodeId, int> ways)
    {
        var answer = RebuildPlanner.Plan(new RebuildJob { Model = model, Rates = rates, Done = done, Renewals = renewals, WaysUsed = ways });
        if (answer is not RebuildAnswer.Planned { Plan: var plan })
            return; // fits that wait for each other: the linter says so, and closing then counts nothing
        var costs = new Dictionary<NodeId, decimal>();
        foreach (var step in plan.Steps)
        {
            var cost = rates.CostOf(step.Time + step.ChangeTime).Amount;
            ImmutableArray<NodeId> shared = step.Node is { } one ? [one] : step.Parts;
            foreach (var node in shared)
                costs[node] = costs.GetValueOrDefault(node) + cost / shared.Length;
        }

        foreach (var (node, cost) in costs.Where(c => nodes.Contains(c.Key)))
            Least(closing, Place(node), cost);
    }

    private decimal Price(Renewal renewal) => renewal.Count * (model.FindPart(renewal.Part)?.Price?.Amount ?? 0);

    private decimal Risk(StripStep step) => step.Way is { } way && model.FindPart(step.Node)?.WaysOff[way].Risk is { } risk
        ? (decimal)risk.Chance * risk.Damages.Sum(p => (model.FindPart(p)?.Count ?? 1) * (model.FindPart(p)?.Price?.Amount ?? 0)) : 0;

    private int Place(NodeId node) => nodes.IndexOf(node);

    private UInt128 Bit(NodeId node)
    {
        if (Place(node) < 0)
        {
            nodes.Add(node);
            opening.Add(-1);
            closing.Add(-1);
        }

        return UInt128.One << Place(node);
    }

    private static void Least(List<decimal> costs, int place, decimal cost) => costs[place] = costs[place] < 0 ? cost : Math.Min(costs[place], cost);

    /// <summary>What no plan has put a price on costs nothing.</summary>
    public void Settle()
    {
        for (var i = 0; i < nodes.Count; i++)
            (opening[i], closing[i]) = (Math.Max(0, opening[i]), Math.Max(0, closing[i]));
    }
}
