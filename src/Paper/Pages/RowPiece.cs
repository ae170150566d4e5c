using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>One row of a table, with a fine rule under it.</summary>
public sealed class RowPiece : Piece
{
    private const double Pad = 2.6;
    private readonly ImmutableArray<SettledCell> cells;
    private readonly Tag table;
    private readonly bool header;
    private readonly Ink? rule;
    private readonly double width;
    private readonly double height;

    private RowPiece(Tag table, ImmutableArray<SettledCell> cells, double width, bool header, Ink? rule)
    {
        (this.table, this.cells, this.width, this.header, this.rule) = (table, cells, width, header, rule);
        height = cells.Max(c => c.Height) + (2 * Pad);
    }

    public override double Height => height;

    /// <summary>The rows for cells that were set: more than one when a cell is too high for a page.</summary>
    internal static IEnumerable<RowPiece> Of(Tag table, ImmutableArray<SettledCell> cells, double width, bool header, Ink? rule, bool keep, Piece? head)
    {
        const int most = 30;
        var lines = cells.Max(c => c.Lines.Length);
        for (var from = 0; from == 0 || from < lines; from += most)
        {
            var part = from == 0 && lines <= most ? cells : [.. cells.Select(c => c.Slice(from, most))];
            var last = from + most >= lines;
            yield return new(table, part, width, header, last ? rule : null) { KeepWithNext = keep && last, RepeatAtTop = head };
        }
    }

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Open(table);
        canvas.Within(new Tag(TagKind.Row), () =>
        {
            foreach (var cell in cells)
                canvas.Within(new Tag(header ? TagKind.HeaderCell : TagKind.DataCell), () => cell.Draw(canvas, x, y + Pad));
        });
        if (rule is { } ink)
            canvas.AsDecoration(() => canvas.Line(ink, x, y + height, x + width, y + height));
    }
}

/// <summary>A cell whose words are set into lines, at its place in the row.</summary>
internal sealed record SettledCell(double X, double Width, bool Right, ImmutableArray<SetLine> Lines, Cell Source)
{
    private const double Box = 11;
    private const double Balloon = 8.5;

    public double Height => Source switch
    {
        Cell.Text => Lines.Sum(l => l.Leading),
        Cell.Number => 2 * Balloon,
        Cell.Tick => 13,
        _ => 24,
    };

    public SettledCell Slice(int from, int most) => this with
    {
        Lines = [.. Lines.Skip(from).Take(most)],
        Source = from > 0 && Source is not Cell.Text ? new Cell.Text([]) : Source,
    };

    public void Draw(Canvas canvas, double x, double y)
    {
        switch (Source)
        {
            case Cell.Tick tick:
                canvas.Rectangle(Ink.Field, x + X, y + 1, Box, Box);
                if (tick.Word is { } word)
                    canvas.Words(word, TextStyle.Body, x + X + Box + 4, y + 0.2);
                break;
            case Cell.Number number:
                var centre = x + X + Balloon;
                canvas.Circle(Ink.Balloon, centre, y + Balloon - 1, Balloon);
                canvas.Words(number.Words, TextStyle.Strong, centre - (TextStyle.Strong.Face.WidthOf(number.Words, TextStyle.Strong.Size) / 2), y + 1.3);
                break;
            case Cell.Write write:
                canvas.Rectangle(Ink.Field, x + X, y, Width, 22);
                canvas.Words(write.Label, TextStyle.Label, x + X + 3, y + 0.5);
                canvas.Words(write.Unit, TextStyle.Label, x + X + Width - 3 - TextStyle.Label.Face.WidthOf(write.Unit, TextStyle.Label.Size), y + 11.5);
                break;
            default:
                foreach (var line in Lines)
                {
                    canvas.Words(line, Right ? x + X + Width - line.Width : x + X, y);
                    y += line.Leading;
                }

                break;
        }
    }
}
