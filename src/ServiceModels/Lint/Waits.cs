namespace Ramwright.ServiceModels.Lint;

/// <summary>
/// Who waits for whom, as an AND/OR graph: a node can start when all needs of one of its ways are there. A node without ways never starts.
/// </summary>
internal sealed class Waits
{
    private readonly Dictionary<string, List<string[]>> ways = new(StringComparer.Ordinal);

    /// <summary>Adds a node that has no way yet.</summary>
    public void AddNode(string id) => ways.TryAdd(id, []);

    /// <summary>Adds a way with what it needs.</summary>
    public void AddWay(string id, IEnumerable<string> needs)
    {
        AddNode(id);
        ways[id].Add([.. needs.Where(n => n.Length > 0).Distinct(StringComparer.Ordinal)]);
    }

    /// <summary>Nodes without a way that somebody needs, each with who waits for it, in order of first mention.</summary>
    public IEnumerable<(string Node, IReadOnlyList<string> Waiting)> NeededWithoutWay() => ways
        .SelectMany(node => node.Value.SelectMany(way => way).Select(need => (need, node.Key)))
        .Where(pair => ways.TryGetValue(pair.need, out var own) && own.Count == 0)
        .GroupBy(pair => pair.need, pair => pair.Key, StringComparer.Ordinal)
        .Select(waiting => (waiting.Key, (IReadOnlyList<string>)[.. waiting.Distinct(StringComparer.Ordinal)]));

    /// <summary>Circles that keep nodes from ever starting, one for each knot; nodes without ways count as there, they are told apart from circles.</summary>
    public IEnumerable<IReadOnlyList<string>> Circles()
    {
        var there = Reached();
        var next = ways.Where(w => !there.Contains(w.Key)).ToDictionary(w => w.Key, w => w.Value.SelectMany(n => n).First(n => ways.ContainsKey(n) && !there.Contains(n)), StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var start in next.Keys)
        {
            var path = new List<string>();
            var here = start;
            while (seen.Add(here))
            {
                path.Add(here);
                here = next[here];
            }

            if (path.IndexOf(here) is >= 0 and var entry)
                yield return path[entry..];
        }
    }

    private HashSet<string> Reached()
    {
        var lacking = new List<(string Node, int Count)>();
        var waiting = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        var there = new HashSet<string>(StringComparer.Ordinal);
        var ready = new Queue<string>();
        foreach (var (node, own) in ways)
        {
            if (own.Count == 0)
                ready.Enqueue(node);
            foreach (var way in own)
            {
                var needs = way.Where(ways.ContainsKey).ToList();
                if (needs.Count == 0)
                    ready.Enqueue(node);
                foreach (var need in needs)
                    (waiting.TryGetValue(need, out var list) ? list : waiting[need] = []).Add(lacking.Count);
                lacking.Add((node, needs.Count));
            }
        }

        while (ready.TryDequeue(out var node))
        {
            if (!there.Add(node))
                continue;
            foreach (var way in waiting.GetValueOrDefault(node) ?? [])
            {
                lacking[way] = lacking[way] with { Count = lacking[way].Count - 1 };
                if (lacking[way].Count == 0)
                    ready.Enqueue(lacking[way].Node);
            }
        }

        return there;
    }
}
