using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.PeakLists;

/// <summary>Why a list fits nowhere: a few readings differ where all others agree, or it shares nothing.</summary>
internal static class Misfit
{
    /// <summary>Looks for the place with most agreement; it counts as meant when at least two readings agree and more agree than differ, or when its new runs were stated.</summary>
    public static Spliced Of(IReadOnlyList<Way> ways, int index, long[] list, int least, int most, ListOrder order)
    {
        (int Agreeing, int Shared, int Added, Way Way)? best = null;
        foreach (var way in ways)
        {
            for (var added = Math.Max(0, least); added <= Math.Max(least, most); added++)
            {
                var (agreeing, shared) = Compare(way, list, added);
                if (best is not { } b || agreeing > b.Agreeing || (agreeing == b.Agreeing && shared < b.Shared))
                    best = (agreeing, shared, added, way);
            }
        }
        if (best is not { } found || found.Shared == 0)
            return new Spliced.Apart(index);
        return least == most || (found.Agreeing >= 2 && 2 * found.Agreeing > found.Shared)
            ? new Spliced.Contradicts(index, found.Added, found.Agreeing, Differences(found.Way, list, found.Added, order))
            : new Spliced.Apart(index);
    }

    private static (int Agreeing, int Shared) Compare(Way way, long[] list, int added)
    {
        var start = way.Series.Length + added - list.Length;
        var (agreeing, shared) = (0, 0);
        for (var i = Math.Max(0, -start); i < list.Length - added; i++)
        {
            shared++;
            if (way.Series[start + i] == list[i])
                agreeing++;
        }
        return (agreeing, shared);
    }

    private static ImmutableArray<Difference> Differences(Way way, long[] list, int added, ListOrder order)
    {
        var start = way.Series.Length + added - list.Length;
        var differing = ImmutableArray.CreateBuilder<Difference>();
        for (var i = Math.Max(0, -start); i < list.Length - added; i++)
        {
            if (way.Series[start + i] != list[i])
                differing.Add(new(order == ListOrder.NewestFirst ? list.Length - i : i + 1, Pressure.FromPascals(way.Series[start + i]), Pressure.FromPascals(list[i])));
        }
        return differing.ToImmutable();
    }
}
