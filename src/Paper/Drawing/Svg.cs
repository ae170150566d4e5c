using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using System.Text;

namespace Ramwright.Paper.Drawing;

/// <summary>Writes a picture as SVG that a strict content security policy lets through: classes, no style attributes, no script, no ids.</summary>
public static class Svg
{
    /// <summary>The <c>svg</c> element, to be put into a page as it stands.</summary>
    public static string Write(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var to = new StringBuilder();
        to.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"picture\" viewBox=\"0 0 {N(picture.Width)} {N(picture.Height)}\" role=\"img\">");
        to.Append(CultureInfo.InvariantCulture, $"<title>{Escape(picture.Title)}</title>");
        if (picture.Description is { } words)
            to.Append(CultureInfo.InvariantCulture, $"<desc>{Escape(words)}</desc>");
        Write(to, picture.Shapes);
        return to.Append("</svg>").ToString();
    }

    private static void Write(StringBuilder to, ImmutableArray<Shape> shapes)
    {
        foreach (var shape in shapes)
            Write(to, shape);
    }

    private static void Write(StringBuilder to, Shape shape)
    {
        var inv = CultureInfo.InvariantCulture;
        switch (shape)
        {
            case Shape.Line l:
                to.Append(inv, $"<path class=\"{Pens.ClassOf(l.Ink)}\" d=\"M{P(l.From)}L{P(l.To)}\"/>");
                break;
            case Shape.Polyline p:
                to.Append(inv, $"<path class=\"{Pens.ClassOf(p.Ink)}\" d=\"M{string.Join('L', p.Spots.Select(P))}{(p.Closed ? "Z" : "")}\"/>");
                break;
            case Shape.Path p:
                to.Append(inv, $"<path class=\"{Pens.ClassOf(p.Ink)}\" d=\"{string.Concat(p.Stretches.Select(Piece))}\"/>");
                break;
            case Shape.Circle c:
                to.Append(inv, $"<circle class=\"{Pens.ClassOf(c.Ink)}\" cx=\"{N(c.Centre.X)}\" cy=\"{N(c.Centre.Y)}\" r=\"{N(c.Radius)}\"/>");
                break;
            case Shape.Rectangle r:
                to.Append(inv, $"<rect class=\"{Pens.ClassOf(r.Ink)}\" x=\"{N(r.Corner.X)}\" y=\"{N(r.Corner.Y)}\" width=\"{N(r.Width)}\" height=\"{N(r.Height)}\"/>");
                break;
            case Shape.Text t:
                var anchor = t.Anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };
                to.Append(inv, $"<text class=\"{Pens.ClassOf(t.Ink)}{(t.Bold ? " bold" : "")}\" x=\"{N(t.At.X)}\" y=\"{N(t.At.Y)}\" font-size=\"{N(t.Size)}\"{anchor}>{Escape(t.Words)}</text>");
                break;
            case Shape.Group g:
                to.Append(inv, $"<g class=\"{Pens.ClassOf(g.Meaning)}\">");
                if (g.Words is { } words)
                    to.Append(inv, $"<title>{Escape(words)}</title>");
                Write(to, g.Shapes);
                to.Append("</g>");
                break;
        }
    }

    private static string Piece(Stretch stretch) => stretch switch
    {
        Stretch.MoveTo m => "M" + P(m.To),
        Stretch.LineTo l => "L" + P(l.To),
        Stretch.CurveTo c => $"C{P(c.First)} {P(c.Second)} {P(c.To)}",
        _ => "Z",
    };

    private static string P(Spot s) => $"{N(s.X)} {N(s.Y)}";

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Escape(string words) => SecurityElement.Escape(words);
}
