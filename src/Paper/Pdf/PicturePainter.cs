using System.Collections.Immutable;
using PdfSharp.Drawing;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;

namespace Ramwright.Paper.Pdf;

/// <summary>Lays the shapes of a picture down on a PDF page, with the pens of <see cref="Pens"/> in the light palette.</summary>
internal static class PicturePainter
{
    public static void Paint(XGraphics on, Canvas canvas, Shape shape, double x, double y, double scale)
    {
        XPoint At(Spot s) => new(x + (s.X * scale), y + (s.Y * scale));
        switch (shape)
        {
            case Shape.Line l:
                on.DrawLine(PenOf(l.Ink, scale)!, At(l.From), At(l.To));
                break;
            case Shape.Polyline { Spots.Length: > 1 } p:
                if (p.Closed)
                    Closed(on, canvas, p.Ink, scale, [.. p.Spots.Select(At)]);
                else if (PenOf(p.Ink, scale) is { } pen)
                    on.DrawLines(pen, [.. p.Spots.Select(At)]);
                break;
            case Shape.Path { Stretches.Length: > 0 } p:
                var path = PathOf(p.Stretches, At);
                if (BrushOf(canvas, p.Ink) is { } fill)
                    on.DrawPath(fill, path);
                if (PenOf(p.Ink, scale) is { } line)
                    on.DrawPath(line, path);
                break;
            case Shape.Circle c:
                var box = new XRect(x + ((c.Centre.X - c.Radius) * scale), y + ((c.Centre.Y - c.Radius) * scale), 2 * c.Radius * scale, 2 * c.Radius * scale);
                on.DrawEllipse(PenOf(c.Ink, scale), BrushOf(canvas, c.Ink), box);
                break;
            case Shape.Rectangle r:
                var corner = At(r.Corner);
                on.DrawRectangle(PenOf(r.Ink, scale), BrushOf(canvas, r.Ink), corner.X, corner.Y, r.Width * scale, r.Height * scale);
                break;
            case Shape.Text t:
                Words(on, canvas, t, At(t.At), scale);
                break;
            case Shape.Group g:
                foreach (var inner in g.Shapes)
                    Paint(on, canvas, inner, x, y, scale);
                break;
        }
    }

    private static void Words(XGraphics on, Canvas canvas, Shape.Text text, XPoint at, double scale)
    {
        var face = text.Bold ? Typeface.Bold : Typeface.Regular;
        var words = Writable.Of(text.Words, face);
        if (words.Length == 0)
            return;
        var width = face.WidthOf(words, text.Size * scale);
        var left = text.Anchor switch { Anchor.Middle => at.X - (width / 2), Anchor.End => at.X - width, _ => at.X };
        on.DrawString(words, canvas.Font(text.Bold, text.Size * scale), canvas.Brush(Pens.For(text.Ink).Fill ?? Tint.Ink), left, at.Y);
    }

    private static void Closed(XGraphics on, Canvas canvas, Ink ink, double scale, XPoint[] points)
    {
        if (BrushOf(canvas, ink) is { } fill)
            on.DrawPolygon(fill, points, XFillMode.Alternate);
        if (PenOf(ink, scale) is { } pen)
            on.DrawPolygon(pen, points);
    }

    private static XGraphicsPath PathOf(ImmutableArray<Stretch> stretches, Func<Spot, XPoint> at)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        var last = default(XPoint);
        foreach (var stretch in stretches)
        {
            switch (stretch)
            {
                case Stretch.MoveTo m:
                    path.StartFigure();
                    last = at(m.To);
                    break;
                case Stretch.LineTo l:
                    path.AddLine(last, at(l.To));
                    last = at(l.To);
                    break;
                case Stretch.CurveTo c:
                    path.AddBezier(last, at(c.First), at(c.Second), at(c.To));
                    last = at(c.To);
                    break;
                default:
                    path.CloseFigure();
                    break;
            }
        }

        return path;
    }

    private static XSolidBrush? BrushOf(Canvas canvas, Ink ink) => Pens.For(ink).Fill is { } tint ? canvas.Brush(tint) : null;

    private static XPen? PenOf(Ink ink, double scale)
    {
        var pen = Pens.For(ink);
        if (pen.Stroke is not { } tint)
            return null;
        // Lines keep their weight on paper when a picture is made smaller, or hair lines would vanish.
        var width = Math.Max(pen.Width * scale, Math.Min(pen.Width, 0.45));
        var made = new XPen(XColor.FromArgb(unchecked((int)0xFF000000) | Pens.OnPaper(tint)), width);
        if (pen.Dashes.Length > 0)
            made.DashPattern = [.. pen.Dashes.Select(d => d * scale / width)];
        if (pen.Round)
            (made.LineJoin, made.LineCap) = (XLineJoin.Round, XLineCap.Round);
        return made;
    }
}
