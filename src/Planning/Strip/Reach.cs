using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>What can be done at all from where the work stands, whatever it costs.</summary>
internal static class Reach
{
    public static HashSet<NodeId> From(EffectiveWays ways, IEnumerable<NodeId> done)
    {
        var reached = new HashSet<NodeId>(done);
        for (var grew = true; grew;)
        {
            grew = false;
            foreach (var (node, waysOff) in ways.Of)
            {
                if (!reached.Contains(node) && waysOff.Any(w => w.Needs.All(reached.Contains)))
                    grew = reached.Add(node);
            }
        }

        return reached;
    }

    /// <summary>What stands in the way of a target that cannot be reached: what has no way itself, or the circle if all have one.</summary>
    public static Unreachable Explain(EffectiveWays ways, HashSet<NodeId> reached, NodeId target)
    {
        var seen = new List<NodeId> { target };
        for (var i = 0; i < seen.Count; i++)
        {
            foreach (var need in ways.Of.GetValueOrDefault(seen[i], []).SelectMany(w => w.Needs))
            {
                if (!reached.Contains(need) && !seen.Contains(need))
                    seen.Add(need);
            }
        }

        ImmutableArray<NodeId> without = [.. seen.Where(n => n != target && ways.Of.GetValueOrDefault(n, []).IsEmpty)];
        return new Unreachable(target, without is [] && !ways.Of.GetValueOrDefault(target, []).IsEmpty ? [.. seen.Skip(1)] : without);
    }
}
