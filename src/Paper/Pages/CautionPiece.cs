using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Signs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Pages;

/// <summary>A caution: sign, signal word, text, on a band across the content.</summary>
public sealed class CautionPiece : Piece
{
    private const double Sign = 24;
    private const double Pad = 6;
    private readonly ImmutableArray<SetLine> lines;
    private readonly Picture sign;
    private readonly double width;
    private readonly double indent;
    private readonly Ink band;

    public CautionPiece(Caution caution, double width, double indent = 0)
    {
        ArgumentNullException.ThrowIfNull(caution);
        (this.width, this.indent) = (width, indent);
        sign = CautionSign.Of(caution);
        band = caution.Level == CautionLevel.Notice ? Ink.Field : Ink.CautionBand;
        lines = TextSetter.Set([new(CautionSign.SignalWord(caution.Level) + ".  ", TextStyle.Strong), new(Sentence(caution.Text), TextStyle.Body)], width - indent - Sign - (3 * Pad));
    }

    public override double Height => Band + 8;

    private double Band => Math.Max(Sign, lines.Sum(l => l.Leading)) + Pad;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.AsDecoration(() => canvas.Rectangle(band, x + indent, y + 5, width - indent, Band));
        canvas.Figure(sign.Title, x + indent + Pad, y + 5 + ((Band - Sign) / 2), Sign, Sign, () => canvas.Picture(sign, x + indent + Pad, y + 5 + ((Band - Sign) / 2), Sign / 48));
        canvas.Open(new Tag(TagKind.Paragraph));
        var at = y + 5 + ((Band - lines.Sum(l => l.Leading)) / 2);
        foreach (var line in lines)
        {
            canvas.Words(line, x + indent + Sign + (2 * Pad), at);
            at += line.Leading;
        }
    }

    private static string Sentence(string text)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
            return "";
        var start = char.ToUpperInvariant(trimmed[0]) + trimmed[1..];
        return start[^1] is '.' or '?' or ':' ? start : start + ".";
    }
}
