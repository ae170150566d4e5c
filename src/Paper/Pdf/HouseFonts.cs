using PdfSharp.Drawing;
using PdfSharp.Fonts;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pdf;

/// <summary>Gives the PDF writer the faces shipped with the program; it never looks on the machine.</summary>
internal sealed class HouseFonts : IFontResolver
{
    private static readonly Lock Gate = new();
    private static bool given;

    /// <summary>Once per process, before the first font is made.</summary>
    public static void Give()
    {
        lock (Gate)
        {
            if (given)
                return;
            GlobalFontSettings.FontResolver = new HouseFonts();
            given = true;
        }
    }

    public static XFont Font(bool bold, double size) =>
        new("B612", size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfSharp.Pdf.PdfFontEncoding.Unicode));

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "B612-Bold" : "B612-Regular");

    public byte[] GetFont(string faceName) => faceName == "B612-Bold" ? Typeface.Bold.Bytes : Typeface.Regular.Bytes;
}
