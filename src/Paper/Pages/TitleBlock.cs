using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>One field of the title block.</summary>
public sealed record BlockField(string Label, string Value, double Share = 1);

/// <summary>
/// The block at the foot of every page, its fields in the spirit of ISO 7200: on the first page all of them in two rows,
/// on the following the first row's essentials. Page and sheet are added by the writer.
/// </summary>
public sealed record TitleBlock
{
    public required ImmutableArray<BlockField> Upper { get; init; }
    public required ImmutableArray<BlockField> Lower { get; init; }

    /// <summary>A square code at the left of the first page's block, and the words below it.</summary>
    public Picture? Code { get; init; }
    public string? CodeWords { get; init; }

    internal const double RowHeight = 36;
    internal const double SlimHeight = 26;

    /// <summary>A signed code has some 70 modules with its quiet zone: each then is 0.5 mm, three dots at 150 to the inch.</summary>
    private const double CodeSide = 100;

    internal double HeightOn(int page) => page > 1 ? SlimHeight : Code is null ? 2 * RowHeight : Math.Max(2 * RowHeight, CodeSide + 16);

    internal void Draw(Canvas canvas, PageForm form, int page, int pages)
    {
        var top = form.FrameBottom - HeightOn(page);
        canvas.Line(Ink.Frame, form.FrameLeft, top, form.FrameRight, top);
        var ofPages = $"{page} of {pages}";
        if (page > 1)
        {
            Row(canvas, form, form.FrameLeft, top, SlimHeight, [.. Upper.Take(3), new("Page", ofPages, 0.6)], slim: true);
            return;
        }

        var left = form.FrameLeft;
        var height = HeightOn(1) / 2;
        if (Code is { } code)
        {
            canvas.Picture(code, left + 8, top + 5, CodeSide / code.Width);
            if (CodeWords is { } words)
            {
                var wide = TextStyle.Label.Face.WidthOf(words, TextStyle.Label.Size);
                canvas.Words(words, TextStyle.Label, left + 8 + ((CodeSide - wide) / 2), top + CodeSide + 4);
            }

            left += CodeSide + 16;
            canvas.Line(Ink.Rule, left, top, left, form.FrameBottom);
        }

        Row(canvas, form, left, top, height, [.. Upper, new("Page", ofPages, 0.62)], slim: false);
        canvas.Line(Ink.Rule, left, top + height, form.FrameRight, top + height);
        Row(canvas, form, left, top + height, height, [.. Lower, new("Sheet", form.Name, 0.62)], slim: false);
    }

    private static void Row(Canvas canvas, PageForm form, double left, double top, double height, ImmutableArray<BlockField> fields, bool slim)
    {
        var unit = (form.FrameRight - left) / fields.Sum(f => f.Share);
        for (var i = 0; i < fields.Length; i++)
        {
            var wide = unit * fields[i].Share;
            if (i > 0)
                canvas.Line(Ink.Rule, left, top, left, top + height);
            canvas.Words(fields[i].Label, TextStyle.Label, left + 7, top + (slim ? 2 : 4));
            var lines = TextSetter.Set(new Span(fields[i].Value, slim ? TextStyle.Value with { Size = 8.4, Leading = 10.5 } : TextStyle.Value), wide - 10);
            var most = slim ? 1 : height > 40 ? 2 : 1;
            var small = lines.Length > most;
            if (small)
                lines = TextSetter.Set(new Span(fields[i].Value, TextStyle.SmallInk with { Bold = true, Size = 7, Leading = 8.2 }), wide - 10);
            var y = top + (slim ? 11 : 13.5);
            foreach (var line in lines.Take(slim ? 1 : small ? (int)((height - 14) / 8.2) : most))
            {
                canvas.Words(line, left + 7, y);
                y += line.Leading;
            }

            left += wide;
        }
    }
}
