using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>One line of a paragraph or heading.</summary>
public sealed class LinePiece(SetLine line, Tag tag) : Piece
{
    public override double Height => line.Leading;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Open(tag);
        canvas.Words(line, x, y);
    }
}

/// <summary>A fine rule across the content.</summary>
public sealed class RulePiece(double width, double above, double below, Drawing.Ink ink = Drawing.Ink.Rule) : Piece
{
    public override double Height => above + below;

    public override void Draw(Canvas canvas, double x, double y) =>
        canvas.AsDecoration(() => canvas.Line(ink, x, y + above, x + width, y + above));
}

/// <summary>A picture at a scale, with the words that stand for it.</summary>
public sealed class PicturePiece(Drawing.Picture picture, double scale, double indent = 0) : Piece
{
    public override double Height => picture.Height * scale;

    public override void Draw(Canvas canvas, double x, double y)
    {
        var words = picture.Description is { } d ? $"{picture.Title}. {d}" : picture.Title;
        canvas.Figure(words, x + indent, y, picture.Width * scale, picture.Height * scale, () => canvas.Picture(picture, x + indent, y, scale));
    }
}

/// <summary>Stacks side by side, kept together.</summary>
public sealed class ColumnsPiece(IReadOnlyList<(double X, IReadOnlyList<Piece> Pieces)> columns) : Piece
{
    public override double Height { get; } = columns.Max(c => c.Pieces.Sum(p => p.Height));

    public override void Draw(Canvas canvas, double x, double y)
    {
        foreach (var (at, pieces) in columns)
        {
            var top = y;
            foreach (var piece in pieces)
            {
                piece.Draw(canvas, x + at, top);
                top += piece.Height;
            }
        }
    }
}
