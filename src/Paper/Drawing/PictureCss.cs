using System.Globalization;
using System.Text;

namespace Ramwright.Paper.Drawing;

/// <summary>
/// The style sheet for pictures on a page, made from <see cref="Pens"/>. The page serves it as a file of its own and defines the
/// custom properties <c>--ink --quiet --rule --faint --lit --pencil --paper --caution --caution-pale</c>.
/// </summary>
public static class PictureCss
{
    private static readonly Lazy<string> Made = new(Write);

    /// <summary>The whole sheet.</summary>
    public static string Sheet => Made.Value;

    private static string Write()
    {
        var css = new StringBuilder(".picture { display: block; inline-size: 100%; block-size: auto; overflow: visible; font-family: B612, sans-serif; font-variant-numeric: tabular-nums }\n");
        css.Append(".picture text { stroke: none } .picture .bold { font-weight: 700 }\n");
        foreach (var ink in Enum.GetValues<Ink>())
        {
            var pen = Pens.For(ink);
            css.Append(CultureInfo.InvariantCulture, $".picture :where(path, line, polyline, polygon, circle, rect, text).{Pens.ClassOf(ink)} {{ fill: {Colour(pen.Fill)}; stroke: {Colour(pen.Stroke)}");
            if (pen.Stroke is not null)
                css.Append(CultureInfo.InvariantCulture, $"; stroke-width: {pen.Width}");
            if (pen.Dashes.Length > 0)
                css.Append(CultureInfo.InvariantCulture, $"; stroke-dasharray: {string.Join(' ', pen.Dashes.Select(d => d.ToString(CultureInfo.InvariantCulture)))}");
            if (pen.Round)
                css.Append("; stroke-linejoin: round; stroke-linecap: round");
            css.Append(" }\n");
        }

        return css.ToString();
    }

    private static string Colour(Tint? tint) => tint switch
    {
        null => "none",
        Tint.SignBlack or Tint.SignBlue or Tint.SignWhite => Hex(tint.Value),
        Tint.Caution => $"var(--caution, {Hex(tint.Value)})",
        { } t => $"var(--{Pens.Kebab(t.ToString())}, {Hex(t)})",
    };

    private static string Hex(Tint tint) => string.Create(CultureInfo.InvariantCulture, $"#{Pens.OnPaper(tint):x6}");
}
