using System.Collections.Immutable;
using PdfSharp;
using PdfSharp.Pdf;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pdf;

namespace Ramwright.Paper.Pages;

/// <summary>What every sheet has besides its content.</summary>
public sealed record SheetHead
{
    public required string Title { get; init; }

    /// <summary>At the right of the title: the house, and what must be said there.</summary>
    public required string Aside { get; init; }

    /// <summary>For the document's properties: what it is about.</summary>
    public required string Subject { get; init; }
    public required string House { get; init; }
    public required DateTimeOffset Made { get; init; }
    public required TitleBlock Block { get; init; }
}

/// <summary>Lays content out on pages with frame, head and title block, and writes it as tagged PDF.</summary>
public static class SheetWriter
{
    private const double HeadHeight = 42;
    private const double SlimHeadHeight = 30;
    private const double Air = 12;

    // The PDF library keeps its fonts in tables shared by the whole process.
    private static readonly Lock OneAtATime = new();

    /// <param name="fill">Puts the content into a flow as wide as the page's content.</param>
    public static byte[] Write(SheetHead head, Sheets.PaperSize size, Action<Flow> fill)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(fill);
        var form = PageForm.Of(size);
        var flow = new Flow(form.ContentWidth);
        fill(flow);
        var pages = Pagination.Split(flow.Pieces(), RoomOn(form, head, 1), RoomOn(form, head, 2));
        lock (OneAtATime)
            return PdfFinish.Finish(Draw(form, head, pages));
    }

    private static double RoomOn(PageForm form, SheetHead head, int page) =>
        form.FrameBottom - form.FrameTop - head.Block.HeightOn(page) - (page == 1 ? HeadHeight : SlimHeadHeight) - (2 * Air);

    private static byte[] Draw(PageForm form, SheetHead head, ImmutableArray<ImmutableArray<Piece>> pages)
    {
        HouseFonts.Give();
        using var document = new PdfDocument();
        document.SetPdfA();
        document.Options.NoCompression = false;
        document.Options.CompressContentStreams = true;
        document.Language = "en-GB";
        document.Info.Title = Property(head.Title);
        document.Info.Subject = Property(head.Subject);
        document.Info.Author = Property(head.House);
        document.Info.Creator = "Ramwright";
        document.Info.CreationDate = head.Made.UtcDateTime;
        document.Info.ModificationDate = head.Made.UtcDateTime;
        var canvas = new Canvas(document);
        for (var i = 0; i < pages.Length; i++)
        {
            var page = document.AddPage();
            page.Width = PdfSharp.Drawing.XUnit.FromPoint(form.Width);
            page.Height = PdfSharp.Drawing.XUnit.FromPoint(form.Height);
            page.Orientation = PageOrientation.Portrait;
            canvas.Begin(page);
            DrawFurniture(canvas, form, head, i + 1, pages.Length);
            var y = form.FrameTop + (i == 0 ? HeadHeight : SlimHeadHeight) + Air;
            foreach (var piece in pages[i])
            {
                piece.Draw(canvas, form.ContentLeft, y);
                y += piece.Height;
            }

            canvas.End();
        }

        using var to = new MemoryStream();
        document.Save(to, closeStream: false);
        return to.ToArray();
    }

    /// <summary>The PDF library writes properties into its XML metadata as they are: signs that XML gives a meaning are written otherwise.</summary>
    private static string Property(string words) =>
        string.Concat(words.Replace("&", "and", StringComparison.Ordinal).Replace('<', '(').Replace('>', ')').Where(c => !char.IsControl(c) && !char.IsSurrogate(c)));

    private static void DrawFurniture(Canvas canvas, PageForm form, SheetHead head, int page, int pages)
    {
        var (left, right) = (form.ContentLeft, form.ContentLeft + form.ContentWidth);
        if (page == 1)
        {
            canvas.Open(new Tag(TagKind.Heading1));
            canvas.Words(head.Title, TextStyle.Title, left, form.FrameTop + 14);
            canvas.Open(new Tag(TagKind.Paragraph));
            Aside(canvas, head.Aside, TextStyle.Body, right, form.FrameTop + 24.5);
        }

        canvas.AsDecoration(() =>
        {
            canvas.Rectangle(Ink.Frame, form.FrameLeft, form.FrameTop, form.FrameRight - form.FrameLeft, form.FrameBottom - form.FrameTop);
            if (page > 1)
            {
                canvas.Words(head.Title, TextStyle.Heading, left, form.FrameTop + 11);
                Aside(canvas, head.Aside, TextStyle.Small, right, form.FrameTop + 13.5);
            }

            var rule = form.FrameTop + (page == 1 ? HeadHeight + 2 : SlimHeadHeight + 1);
            canvas.Line(Ink.Rule, left, rule, right, rule);
        });
        if (page == 1)
            DrawBlock(canvas, form, head, page, pages);
        else
            canvas.AsDecoration(() => head.Block.Draw(canvas, form, page, pages));
    }

    private static void DrawBlock(Canvas canvas, PageForm form, SheetHead head, int page, int pages)
    {
        canvas.Open(new Tag(TagKind.Paragraph));
        head.Block.Draw(canvas, form, page, pages);
    }

    private static void Aside(Canvas canvas, string words, TextStyle style, double right, double y) =>
        canvas.Words(words, style, right - style.Face.WidthOf(words, style.Size), y);
}
