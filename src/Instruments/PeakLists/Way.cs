using System.Collections.Immutable;

namespace Ramwright.Instruments.PeakLists;

/// <summary>One way to lay the lists seen so far: the series in pascals, oldest first, and behind which run each list ends.</summary>
internal sealed record Way(long[] Series, ImmutableList<int> Ends)
{
    public static Way Of(long[] first) => new(first, [first.Length]);

    /// <summary>Every way in which a list fits behind this one with so many new runs.</summary>
    /// <param name="mayReachBack">Whether the list may hold runs from before the oldest known one, as after a list that was copied in part.</param>
    public IEnumerable<Way> Behind(long[] list, int least, int most, bool mayReachBack)
    {
        for (var added = least; added <= most; added++)
        {
            var start = Series.Length + added - list.Length; // of the list, counted from the oldest known run
            if (start < 0 && !mayReachBack)
                continue;
            var known = Series.AsSpan(Math.Max(0, start));
            if (known.SequenceEqual(list.AsSpan(Math.Max(0, -start), known.Length)))
                yield return With(list, added, Math.Max(0, -start));
        }
    }

    private Way With(long[] list, int added, int older)
    {
        long[] series = [.. list.AsSpan(0, older), .. Series, .. list.AsSpan(list.Length - added)];
        var ends = older == 0 ? Ends : [.. Ends.Select(e => e + older)];
        return new(series, ends.Add(series.Length));
    }
}

/// <summary>Ways with different series; bounded.</summary>
internal sealed class WaySet
{
    private const int MostWays = 1_000;
    private const int MostReadings = 2_000_000;
    private readonly Dictionary<int, List<Way>> _byHash = [];
    private int _readings;

    public int Count { get; private set; }

    /// <summary>Adds those whose series is new; false when there is no more room.</summary>
    public bool TryAdd(IEnumerable<Way> ways)
    {
        foreach (var way in ways)
        {
            var hash = new HashCode();
            foreach (var pascals in way.Series)
                hash.Add(pascals);
            var key = hash.ToHashCode();
            if (!_byHash.TryGetValue(key, out var same))
                _byHash[key] = same = [];
            if (same.Exists(w => w.Series.AsSpan().SequenceEqual(way.Series)))
                continue;
            same.Add(way);
            _readings += way.Series.Length;
            if (++Count > MostWays || _readings > MostReadings)
                return false;
        }
        return true;
    }

    public List<Way> ToList() => [.. _byHash.Values.SelectMany(w => w).OrderBy(w => w.Series.Length)];
}
