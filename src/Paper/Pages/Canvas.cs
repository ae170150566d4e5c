using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pdf;

namespace Ramwright.Paper.Pages;

/// <summary>What pieces draw on: one page after the other, each thing under its tag in the document's structure.</summary>
public sealed class Canvas
{
    private readonly StructureBuilder structure;
    private readonly Dictionary<(bool Bold, double Size), XFont> fonts = [];
    private readonly Dictionary<Tint, XSolidBrush> brushes = [];
    private XGraphics? graphics;
    private Tag? open;

    internal Canvas(PdfDocument document)
    {
        structure = UAManager.ForDocument(document).StructureBuilder;
    }

    private XGraphics On => graphics ?? throw new InvalidOperationException("No page has been begun.");

    internal void Begin(PdfPage page) => graphics = XGraphics.FromPdfPage(page);

    internal void End()
    {
        CloseTag();
        graphics?.Dispose();
        graphics = null;
    }

    /// <summary>What is drawn from here on belongs to the tag, until another is opened.</summary>
    public void Open(Tag tag)
    {
        ArgumentNullException.ThrowIfNull(tag);
        if (open == tag)
            return;
        CloseTag();
        BeginTag(tag);
        open = tag;
    }

    /// <summary>Draws under a tag inside the one that is open.</summary>
    public void Within(Tag tag, Action draw)
    {
        ArgumentNullException.ThrowIfNull(tag);
        ArgumentNullException.ThrowIfNull(draw);
        BeginTag(tag);
        draw();
        structure.End();
    }

    /// <summary>Draws what is only decoration, or stands on every page: readers pass over it.</summary>
    public void AsDecoration(Action draw)
    {
        ArgumentNullException.ThrowIfNull(draw);
        structure.BeginArtifact();
        draw();
        structure.End();
    }

    /// <summary>Draws a figure with the words that stand for it.</summary>
    public void Figure(string words, double x, double y, double width, double height, Action draw)
    {
        ArgumentNullException.ThrowIfNull(draw);
        CloseTag();
        structure.BeginElement(PdfIllustrationElementTag.Figure, words, new XRect(x, y, width, height));
        draw();
        structure.End();
    }

    /// <summary>A line that has been set, its upper left corner at the place.</summary>
    public void Words(SetLine line, double x, double y)
    {
        ArgumentNullException.ThrowIfNull(line);
        var baseline = y + ((line.Leading - line.Size) / 2) + (line.Size * 0.8);
        foreach (var run in line.Runs)
            On.DrawString(run.Words, Font(run.Style.Bold, run.Style.Size), Brush(run.Style.Tint), x + run.X, baseline);
    }

    /// <summary>One line of words in one style.</summary>
    public void Words(string words, TextStyle style, double x, double y)
    {
        ArgumentNullException.ThrowIfNull(style);
        On.DrawString(Writable.Of(words, style.Face), Font(style.Bold, style.Size), Brush(style.Tint), x, y + ((style.Leading - style.Size) / 2) + (style.Size * 0.8));
    }

    public void Line(Ink ink, double x1, double y1, double x2, double y2) => PicturePainter.Paint(On, this, new Shape.Line(ink, new(x1, y1), new(x2, y2)), 0, 0, 1);

    public void Rectangle(Ink ink, double x, double y, double width, double height) =>
        PicturePainter.Paint(On, this, new Shape.Rectangle(ink, new(x, y), width, height), 0, 0, 1);

    public void Circle(Ink ink, double x, double y, double radius) => PicturePainter.Paint(On, this, new Shape.Circle(ink, new(x, y), radius), 0, 0, 1);

    /// <summary>A picture, its upper left corner at the place.</summary>
    public void Picture(Picture picture, double x, double y, double scale)
    {
        ArgumentNullException.ThrowIfNull(picture);
        foreach (var shape in picture.Shapes)
            PicturePainter.Paint(On, this, shape, x, y, scale);
    }

    internal XFont Font(bool bold, double size)
    {
        size = Math.Round(size, 2);
        if (!fonts.TryGetValue((bold, size), out var font))
            fonts[(bold, size)] = font = HouseFonts.Font(bold, size);
        return font;
    }

    internal XSolidBrush Brush(Tint tint)
    {
        if (!brushes.TryGetValue(tint, out var brush))
            brushes[tint] = brush = new(XColor.FromArgb(unchecked((int)0xFF000000) | Pens.OnPaper(tint)));
        return brush;
    }

    private void CloseTag()
    {
        if (open is null)
            return;
        structure.End();
        open = null;
    }

    private void BeginTag(Tag tag)
    {
        switch (tag.Kind)
        {
            case TagKind.Heading1: structure.BeginElement(PdfBlockLevelElementTag.Heading1); break;
            case TagKind.Heading2: structure.BeginElement(PdfBlockLevelElementTag.Heading2); break;
            case TagKind.Table: structure.BeginElement(PdfBlockLevelElementTag.Table); break;
            case TagKind.Row: structure.BeginElement(PdfBlockLevelElementTag.TableRow); break;
            case TagKind.HeaderCell: structure.BeginElement(PdfBlockLevelElementTag.TableHeaderCell); break;
            case TagKind.DataCell: structure.BeginElement(PdfBlockLevelElementTag.TableDataCell); break;
            default: structure.BeginElement(PdfBlockLevelElementTag.Paragraph); break;
        }
    }
}
