using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>Content in the making: headings, paragraphs, tables and pictures become pieces of known height.</summary>
public sealed class Flow(double width)
{
    private readonly List<Piece> pieces = [];

    /// <summary>Room for content, points.</summary>
    public double Width => width;

    public ImmutableArray<Piece> Pieces() => [.. pieces];

    public double Height => pieces.Sum(p => p.Height);

    public void Add(Piece piece) => pieces.Add(piece);

    public void Space(double height) => pieces.Add(new SpacePiece(height));

    public void Rule(double above = 3, double below = 5, Ink ink = Ink.Rule) => pieces.Add(new RulePiece(width, above, below, ink));

    public void PageBreak() => pieces.Add(new PageBreakPiece());

    /// <summary>A heading, kept with what follows.</summary>
    public void Heading(string words, string? aside = null)
    {
        var tag = new Tag(TagKind.Heading2);
        ImmutableArray<Span> spans = aside is null ? [new(words, TextStyle.Heading)] : [new(words + "  ", TextStyle.Heading), new(aside, TextStyle.Small)];
        foreach (var line in TextSetter.Set(spans, width))
            pieces.Add(new LinePiece(line, tag) { KeepWithNext = true });
        pieces.Add(new SpacePiece(1.5) { KeepWithNext = true });
    }

    public void Paragraph(params ImmutableArray<Span> spans) => Paragraph(keepWithNext: false, spans);

    /// <summary>A paragraph; neither its first nor its last line is left alone on a page.</summary>
    public void Paragraph(bool keepWithNext, params ImmutableArray<Span> spans)
    {
        var tag = new Tag(TagKind.Paragraph);
        var lines = TextSetter.Set(spans, width);
        for (var i = 0; i < lines.Length; i++)
        {
            var last = i == lines.Length - 1;
            pieces.Add(new LinePiece(lines[i], tag) { KeepWithNext = last ? keepWithNext : i == 0 || i == lines.Length - 2 });
        }
    }

    /// <summary>A paragraph that is kept whole.</summary>
    public void Whole(params ImmutableArray<Span> spans)
    {
        var tag = new Tag(TagKind.Paragraph);
        var lines = TextSetter.Set(spans, width);
        for (var i = 0; i < lines.Length; i++)
            pieces.Add(new LinePiece(lines[i], tag) { KeepWithNext = i < lines.Length - 1 });
    }

    /// <summary>Paragraphs with a dash before each.</summary>
    public void Points(IEnumerable<string> lines, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(lines);
        style ??= TextStyle.Body;
        foreach (var words in lines)
            pieces.AddRange(Hanging("–", words, style));
    }

    public void Picture(Picture picture, double? scale = null)
    {
        ArgumentNullException.ThrowIfNull(picture);
        pieces.Add(new PicturePiece(picture, scale ?? width / picture.Width));
    }

    /// <summary>A table. The header row is kept with the first row and repeated on each page.</summary>
    public void Table(ImmutableArray<Column> columns, IEnumerable<Cell>? header, IEnumerable<ImmutableArray<Cell>> rows, TextStyle? headerStyle = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var tag = new Tag(TagKind.Table);
        RowPiece? head = null;
        if (header is not null)
        {
            head = RowPiece.Of(tag, Settle(columns, [.. header.Select(c => Restyled(c, headerStyle ?? TextStyle.Label))]), width, header: true, Ink.Rule, keep: true, null).First();
            pieces.Add(head);
        }

        foreach (var row in rows)
            pieces.AddRange(RowPiece.Of(tag, Settle(columns, row), width, header: false, Ink.Grid, keep: false, head));
    }

    /// <summary>One row of a table that goes on: for steps, each kept with what belongs to it.</summary>
    public void Row(Tag table, ImmutableArray<Column> columns, ImmutableArray<Cell> row, Ink? rule = Ink.Grid, bool keepWithNext = false, bool header = false, double gutter = 8) =>
        pieces.AddRange(RowPiece.Of(table, Settle(columns, row, gutter), width, header, rule, keepWithNext, null));

    /// <summary>Labels with their values, as in a drawing's notes.</summary>
    public void Facts(double labelWidth, params IEnumerable<(string Label, string? Value)> facts) => FactsOf(labelWidth, TextStyle.Quiet, facts.Select(f => (f.Label, f.Value is null ? (Cell?)null : (Cell)f.Value)));

    /// <summary>The same in small letters: what stands beside the answer.</summary>
    public void SmallFacts(double labelWidth, params IEnumerable<(string Label, string? Value)> facts) =>
        FactsOf(labelWidth, TextStyle.Small, facts.Select(f => (f.Label, f.Value is null ? (Cell?)null : (Cell)new Span(f.Value, TextStyle.SmallInk))));

    private void FactsOf(double labelWidth, TextStyle labels, IEnumerable<(string Label, Cell? Value)> facts)
    {
        var tag = new Tag(TagKind.Table);
        ImmutableArray<Column> columns = [new(labelWidth, Fixed: true), new(1)];
        foreach (var (label, value) in facts)
        {
            if (value is not null)
                pieces.AddRange(RowPiece.Of(tag, Settle(columns, [new Span(label, labels), value]), width, header: false, Ink.Grid, keep: false, null));
        }
    }

    /// <summary>Two or more stacks side by side; below each other when they are too high to be kept together.</summary>
    public void Columns(double gap, double mostHeight, params ImmutableArray<(double Share, Action<Flow> Fill)> columns)
    {
        var shares = columns.Sum(c => c.Share);
        var room = width - (gap * (columns.Length - 1));
        var made = new List<(double X, IReadOnlyList<Piece> Pieces)>();
        double x = 0;
        foreach (var (share, fill) in columns)
        {
            var inner = new Flow(room * share / shares);
            fill(inner);
            made.Add((x, inner.Pieces()));
            x += inner.Width + gap;
        }

        if (made.TrueForAll(c => c.Pieces.Sum(p => p.Height) <= mostHeight))
        {
            pieces.Add(new ColumnsPiece(made));
            return;
        }

        foreach (var (_, fill) in columns)
        {
            fill(this);
            Space(8);
        }
    }

    private static Cell Restyled(Cell cell, TextStyle style) =>
        cell is Cell.Text t ? Cell.Of([.. t.Spans.Select(s => s.Style == TextStyle.Body ? s with { Style = style } : s)]) : cell;

    private IEnumerable<Piece> Hanging(string sign, string words, TextStyle style)
    {
        const double indent = 10;
        var tag = new Tag(TagKind.Paragraph);
        var lines = TextSetter.Set(new Span(words, style), width - indent);
        for (var i = 0; i < lines.Length; i++)
        {
            var shifted = lines[i].Runs.Select(r => r with { X = r.X + indent }).ToImmutableArray();
            var runs = i == 0 ? shifted.Insert(0, new SetRun(0, sign, style)) : shifted;
            yield return new LinePiece(lines[i] with { Runs = runs }, tag) { KeepWithNext = i == 0 && lines.Length > 1 };
        }
    }

    private ImmutableArray<SettledCell> Settle(ImmutableArray<Column> columns, ImmutableArray<Cell> row, double gutter = 8)
    {
        var free = width - columns.Where(c => c.Fixed).Sum(c => c.Share) - (gutter * (columns.Length - 1));
        var shares = columns.Where(c => !c.Fixed).Sum(c => c.Share);
        var settled = ImmutableArray.CreateBuilder<SettledCell>();
        double x = 0;
        for (var i = 0; i < columns.Length; i++)
        {
            var wide = columns[i].Fixed ? columns[i].Share : free * columns[i].Share / shares;
            if (i < row.Length)
                settled.Add(new(x, wide, columns[i].Right, row[i] is Cell.Text t ? TextSetter.Set(t.Spans, wide) : [], row[i]));
            x += wide + gutter;
        }

        return settled.ToImmutable();
    }
}
