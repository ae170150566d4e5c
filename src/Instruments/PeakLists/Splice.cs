using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.PeakLists;

/// <summary>Joins overlapping peak lists to the one series of which each is a part.</summary>
/// <remarks>
/// A tool's memory is a window on its runs: each list is a stretch of the series, and no list ends before the one read out earlier. Every way
/// to lay the lists over each other, in which all shared readings are equal, is followed list by list; ways that make the same series are one.
/// The series is certain when one remains. Readings are compared to the pascal.
/// </remarks>
public static class Splice
{
    /// <summary>Most lists that are joined.</summary>
    public const int MostLists = 1_000;

    /// <exception cref="ArgumentException">A caller's bug: no list or more than <see cref="MostLists"/>, or counts that do not belong to the lists.</exception>
    public static Spliced Join(SpliceQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Lists.Length is 0 or > MostLists)
            throw new ArgumentException($"One list is wanted, at most {MostLists}.", nameof(question));
        if (!question.NewRuns.IsEmpty && question.NewRuns.Length != question.Lists.Length - 1)
            throw new ArgumentException("One count of new runs belongs to each list but the first.", nameof(question));
        if (question.Depth < 1 || question.LeastShared < 1 || question.NewRuns.Any(n => n < 0))
            throw new ArgumentException("Depth and shared readings are one or more, new runs zero or more.", nameof(question));
        if (question.Order is { } order)
            return Join(question, order);
        return (Join(question, ListOrder.NewestFirst), Join(question, ListOrder.OldestFirst)) switch
        {
            (Spliced.Whole a, Spliced.Whole b) => a.Series.SequenceEqual(b.Series) ? a : new Spliced.OrderOpen(),
            (Spliced.Whole or Spliced.Ambiguous or Spliced.TooManyWays, Spliced.Ambiguous or Spliced.TooManyWays)
                or (Spliced.Ambiguous or Spliced.TooManyWays, Spliced.Whole) => new Spliced.OrderOpen(),
            (Spliced.Whole a, _) => a,
            (_, Spliced.Whole b) => b,
            (Spliced.Ambiguous or Spliced.TooManyWays, _) and var (a, _) => a,
            (_, Spliced.Ambiguous or Spliced.TooManyWays) and var (_, b) => b,
            (Spliced.Contradicts a, Spliced.Contradicts b) => a.Agreeing >= b.Agreeing ? a : b,
            (_, Spliced.Contradicts b) => b,
            (var a, _) => a,
        };
    }

    private static Spliced Join(SpliceQuestion question, ListOrder order)
    {
        var lists = question.Lists.Select(l => Pascals(l, order)).ToArray();
        if (question.Depth is { } depth && NotWhole(lists, depth) is { } notWhole)
            return notWhole;
        List<Way> ways = [Way.Of(lists[0])];
        for (var i = 1; i < lists.Length; i++)
        {
            var stated = question.NewRuns.IsEmpty ? null : question.NewRuns[i - 1];
            if (stated > lists[i].Length)
                return new Spliced.Gap(i, stated.Value - lists[i].Length);
            var (least, most) = NewRunsOf(lists[i - 1].Length, lists[i].Length, stated, question);
            var next = new WaySet();
            foreach (var way in ways)
            {
                if (!next.TryAdd(way.Behind(lists[i], least, most, mayReachBack: question.Depth is null)))
                    return new Spliced.TooManyWays(i);
            }
            if (next.Count == 0)
                return Misfit.Of(ways, i, lists[i], least, most, order);
            ways = next.ToList();
        }
        return ways.Count == 1 ? Told(ways[0], question, order) : Open(ways);
    }

    /// <summary>How many runs may be new; a memory that is not yet full keeps all, so its length tells them.</summary>
    private static (int Least, int Most) NewRunsOf(int before, int now, int? stated, SpliceQuestion question)
    {
        var (least, most) = (0, Math.Max(0, now - question.LeastShared));
        if (stated is { } known)
            (least, most) = (known, known);
        if (question.Depth is { } depth)
            (least, most) = (Math.Max(least, now - before), now < depth ? Math.Min(most, now - before) : most);
        return (least, most);
    }

    private static Spliced.NotWholeMemory? NotWhole(long[][] lists, int depth)
    {
        for (var i = 0; i < lists.Length; i++)
        {
            if (lists[i].Length > depth || (i > 0 && lists[i].Length < lists[i - 1].Length))
                return new(i, lists[i].Length, depth);
        }
        return null;
    }

    private static Spliced.Whole Told(Way way, SpliceQuestion question, ListOrder order)
    {
        var places = way.Ends.Select((end, i) =>
        {
            var readings = question.Lists[i].Peaks.Length;
            return new ListPlace(question.Lists[i].Name, end - readings + 1, end, i == 0 ? readings : end - way.Ends[i - 1], i == 0 ? 0 : readings - (end - way.Ends[i - 1]));
        });
        return new([.. way.Series.Select(p => Pressure.FromPascals(p))], [.. places], order);
    }

    private static Spliced.Ambiguous Open(List<Way> ways)
    {
        for (var i = 1; ; i++) // ways that differ differ behind some list
        {
            var possible = ways.Select(w => w.Ends[i] - w.Ends[i - 1]).Distinct().Order().ToImmutableArray();
            if (possible.Length > 1)
                return new(i, possible, [.. ways.Select(w => w.Series.Length).Distinct().Order()]);
        }
    }

    private static long[] Pascals(PeakList list, ListOrder order)
    {
        var pascals = list.Peaks.Select(p => (long)Math.Round(p.Pascals)).ToArray();
        if (order == ListOrder.NewestFirst)
            Array.Reverse(pascals);
        return pascals;
    }
}
