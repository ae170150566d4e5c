using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>What must come before what in a rebuild: the model's own word first, then the removal in reverse as far as it does not contradict.</summary>
internal sealed class RebuildOrder
{
    private readonly RebuildNodes nodes;
    private readonly HashSet<int>[] before;

    private RebuildOrder(RebuildNodes nodes)
    {
        this.nodes = nodes;
        before = [.. nodes.All.Select(_ => new HashSet<int>())];
    }

    /// <summary>For each act those that must come before it.</summary>
    public IReadOnlyList<IReadOnlySet<int>> Before => before;

    /// <summary>The acts that wait for each other by the model's own word, or none.</summary>
    public ImmutableArray<int> Circle { get; private set; } = [];

    public static RebuildOrder Of(RebuildJob job, RebuildNodes nodes)
    {
        var order = new RebuildOrder(nodes);
        for (var node = 0; node < nodes.All.Count; node++)
            order.AddWritten(node);
        order.Circle = order.FindCircle();
        if (order.Circle is [])
            order.AddReversed(job);
        return order;
    }

    private void AddWritten(int node)
    {
        switch (nodes.All[node])
        {
            case RebuildNode.PartIn part:
                foreach (var after in (part.Part.Fit?.After ?? []).Concat(part.Alone?.After ?? []))
                    Add(nodes.Back(after), node);
                break;
            case RebuildNode.PartOnUnit part:
                var unit = nodes.Back(part.Part.Id);
                Add(node, unit);
                foreach (var after in part.Part.Fit?.After ?? [])
                {
                    if (nodes.Back(after) == unit)
                        Add(nodes.OnUnit(after), node);
                    else
                        Add(nodes.Back(after), unit);
                }

                break;
            case RebuildNode.UnitIn unitIn:
                foreach (var after in unitIn.Unit.After)
                    Add(nodes.Back(after), node);
                break;
            case RebuildNode.StateEnded state:
                foreach (var after in state.Undo.After)
                    Add(nodes.Back(after), node);
                foreach (var later in state.Undo.Before)
                    Add(node, nodes.Back(later));
                break;
        }
    }

    /// <summary>What stood in the way of a part goes back after it; what a removal spoilt in place is renewed before that part goes back.</summary>
    private void AddReversed(RebuildJob job)
    {
        var ways = new EffectiveWays(job.Model);
        foreach (var id in job.Model.Parts.Where(p => job.Done.Contains(p.Id)).Select(p => p.Id)
            .Concat(job.Model.States.Where(s => job.Done.Contains(s.Id)).Select(s => s.Id)))
        {
            var part = job.Model.FindPart(id);
            var used = part is null ? null : nodes.WayUsed(part);
            var way = ways.Of[id].FirstOrDefault(w => part is null || (w.Index is { } i && part.WaysOff[i] == used));
            foreach (var need in way?.Needs ?? [])
                AddUnlessCircle(id, need);
        }

        foreach (var renewal in job.Renewals.Where(r => !job.Done.Contains(r.Part)))
        {
            if (renewal.By is { } by)
                AddUnlessCircle(renewal.Part, by);
        }
    }

    private void AddUnlessCircle(NodeId first, NodeId then)
    {
        var (from, to) = (nodes.Back(first), nodes.Back(then));
        if (from == to && from is not null)
            (from, to) = CameOffWhole(then) ? (nodes.OnUnit(then), nodes.OnUnit(first)) : (nodes.OnUnit(first), nodes.OnUnit(then));
        if (from is { } f && to is { } t && !Precedes(t, f))
            Add(f, t);
    }

    /// <summary>Whether a part of a unit left the tool before any other of it: the others were taken off it on the bench and go back on it.</summary>
    private bool CameOffWhole(NodeId id) => nodes.Back(id) is { } back && nodes.All[back] is RebuildNode.UnitIn unit
        && unit.Members.FirstOrDefault(m => m.Id == id) is { } member
        && !(nodes.WayUsed(member)?.Needs ?? []).Any(need => unit.Members.Any(m => m.Id == need));

    private void Add(int? first, int? then)
    {
        if (first is { } f && then is { } t)
            before[t].Add(f);
    }

    private bool Precedes(int first, int then)
    {
        var (seen, open) = (new HashSet<int> { then }, new Stack<int>([then]));
        while (open.TryPop(out var at))
        {
            if (at == first)
                return true;
            foreach (var earlier in before[at].Where(seen.Add))
                open.Push(earlier);
        }

        return false;
    }

    /// <summary>Takes away what can start until nothing can; what is left holds a circle, found by walking backwards.</summary>
    private ImmutableArray<int> FindCircle()
    {
        var left = Enumerable.Range(0, before.Length).ToHashSet();
        while (left.Where(n => !before[n].Overlaps(left)).ToList() is { Count: > 0 } free)
            left.ExceptWith(free);
        if (left.Count == 0)
            return [];
        var walk = new List<int> { left.Min() };
        while (true)
        {
            var next = before[walk[^1]].Where(left.Contains).Min();
            var seen = walk.IndexOf(next);
            if (seen >= 0)
                return [.. Enumerable.Reverse(walk.Skip(seen))];
            walk.Add(next);
        }
    }
}
