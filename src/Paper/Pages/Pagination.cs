using System.Collections.Immutable;

namespace Ramwright.Paper.Pages;

/// <summary>Puts pieces on pages: what must stay together does, and a table's head is repeated.</summary>
public static class Pagination
{
    /// <param name="pieces">In order.</param>
    /// <param name="firstRoom">Height for content on the first page, above zero.</param>
    /// <param name="room">Height for content on the following pages, above zero.</param>
    /// <returns>At least one page. A piece higher than a page gets one of its own.</returns>
    public static ImmutableArray<ImmutableArray<Piece>> Split(ImmutableArray<Piece> pieces, double firstRoom, double room)
    {
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<Piece>>();
        var page = new List<Piece>();
        double used = 0;
        for (var i = 0; i < pieces.Length;)
        {
            if (pieces[i].IsPageBreak)
            {
                i++;
                if (page.Exists(p => !p.IsSpace))
                {
                    pages.Add([.. page]);
                    page.Clear();
                    used = 0;
                }

                continue;
            }

            var end = GroupEnd(pieces, i);
            var height = pieces[i..end].Sum(p => p.Height);
            var limit = pages.Count == 0 ? firstRoom : room;
            var begun = page.Exists(p => !p.IsSpace);
            if (!begun && used + height > limit + 0.01)
            {
                page.Clear(); // space at the top gives way first
                used = 0;
            }

            // A chain of pieces kept together that fits on no page is broken where the page ends.
            var taken = height <= (begun ? room : limit) ? end : i + 1;
            height = pieces[i..taken].Sum(p => p.Height);
            if (begun && used + height > limit + 0.01)
            {
                pages.Add([.. page]);
                page.Clear();
                used = 0;
                if (pieces[i].RepeatAtTop is { } head && pieces[i] != head)
                {
                    page.Add(head);
                    used = head.Height;
                }
            }

            for (; i < taken; i++)
            {
                if (page.Count == 0 && pieces[i].IsSpace && pages.Count > 0)
                    continue;
                page.Add(pieces[i]);
                used += pieces[i].Height;
            }
        }

        if (page.Count > 0 || pages.Count == 0)
            pages.Add([.. page]);
        return pages.ToImmutable();
    }

    private static int GroupEnd(ImmutableArray<Piece> pieces, int start)
    {
        var end = start;
        while (end < pieces.Length - 1 && pieces[end].KeepWithNext)
            end++;
        return end + 1;
    }
}
