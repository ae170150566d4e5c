using System.Globalization;
using System.Text;

namespace Ramwright.Paper.Lettering;

/// <summary>Text made ready for the page: signs that the face lacks are replaced by near ones, never by an empty box.</summary>
public static class Writable
{
    /// <summary>The text with every sign in the face. Line breaks and tabs become spaces; other control signs go.</summary>
    public static string Of(string text, Typeface face)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(face);
        var ready = true;
        foreach (var rune in text.EnumerateRunes())
            ready &= face.Has(rune) && !Rune.IsControl(rune);
        if (ready)
            return text;
        var to = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            Put(to, rune, face);
        return to.ToString();
    }

    private static void Put(StringBuilder to, Rune rune, Typeface face)
    {
        if (rune.Value is '\n' or '\r' or '\t')
            to.Append(' ');
        else if (Rune.IsControl(rune) || Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format)
            return;
        else if (face.Has(rune))
            to.Append(rune.ToString());
        else if (Near(rune.Value) is { } near)
            to.Append(near);
        else
            PutDecomposed(to, rune, face);
    }

    private static string? Near(int sign) => sign switch
    {
        0x03BC => "\u00B5",
        0x2126 => "\u03A9",
        0x2300 => "Ø",
        0x2011 or 0x2010 or 0x2012 => "-",
        0x2212 => "\u2013",
        0x2044 or 0x2215 => "/",
        0x2116 => "no.",
        0x141 => "L",
        0x142 => "l",
        0x2192 => "->",
        0x2190 => "<-",
        0x21BB => "clockwise",
        0x21BA => "anticlockwise",
        0x2153 => "1/3",
        0x2154 => "2/3",
        0x215B => "1/8",
        0x2002 or 0x2003 or 0x2009 or 0x202F or 0x00A0 => " ",
        _ => null,
    };

    private static void PutDecomposed(StringBuilder to, Rune rune, Typeface face)
    {
        var before = to.Length;
        foreach (var part in rune.ToString().Normalize(NormalizationForm.FormKD).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(part) != UnicodeCategory.NonSpacingMark && face.Has(part))
                to.Append(part.ToString());
        }

        if (to.Length == before)
            to.Append('?');
    }
}
