using System.Diagnostics;
using System.Text;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Signing;
using Ramwright.Paper.Tests.Saltmarsh;
using ZXing;
using ZXing.Common;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The printed code, rasterised by poppler at a poor printer's 150 dots per inch and read by ZXing, which is no part of this program.</summary>
public sealed class PrintedCodeTests
{
    [Fact]
    public void Is_read_back_from_a_print_of_150_dots_per_inch() => Assert.True(
        Enumerable.Range(0, 4).Any(_ => SignedReport.Of(Proofs.Report, PaperSize.A4, UnitSystem.Metric, Signed.Key) is var report && report.Code == ReadBack(report.Pdf)),
        "none of four reports, each with another signature, was read back; a single one now and then is not, at so few dots");

    [Fact]
    public void Is_read_back_with_the_longest_words_it_takes()
    {
        var wide = Proofs.Report with
        {
            Number = "SM-123456789-P12",
            Replaces = "SM-123456789-P11",
            Job = House.Job with { Number = "SM-123456789", Tool = new string('M', 90), Serial = new string('7', 90) },
            ReleasedBy = new(string.Concat(Enumerable.Repeat("Œuvre ", 20))),
        };
        var report = SignedReport.Of(wide, PaperSize.Letter, UnitSystem.Imperial, Signed.Key);
        Assert.Equal(report.Code, ReadBack(report.Pdf));
        var read = Assert.IsType<PaperAnswer.Genuine>(PaperCheck.Of(Encoding.UTF8.GetBytes(report.Code), Signed.List)).Paper;
        Assert.Equal(new string('M', 29) + "…", read.Tool);
        Assert.EndsWith("…", read.Signatory, StringComparison.Ordinal);
    }

    // The sizes that docs/reference/proof-code.md names.
    [Fact]
    public void Takes_some_330_signs_and_never_more_than_500()
    {
        Assert.InRange(Signed.Report.Code.Length, 300, 360);
        var modules = QrPicture.Of(Signed.Report.Code, "test").Width;
        Assert.InRange(modules, 57 + 8, 65 + 8);
    }

    private static string? ReadBack(byte[] pdf)
    {
        using var folder = new Folder();
        var path = folder.Write("report.pdf", pdf);
        using (var tool = Process.Start("pdftoppm", ["-r", "150", "-gray", "-f", "1", "-l", "1", "-singlefile", path, Path.Combine(folder.Path, "page")]))
            tool.WaitForExit();
        var (width, height, grey) = Grey(File.ReadAllBytes(Path.Combine(folder.Path, "page.pgm")));
        var reader = new BarcodeReaderGeneric { Options = new DecodingOptions { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } };
        return reader.Decode(new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }

    /// <summary>A binary PGM: <c>P5</c>, width, height, 255, and a byte for each dot.</summary>
    private static (int Width, int Height, byte[] Grey) Grey(byte[] pgm)
    {
        var words = Encoding.ASCII.GetString(pgm, 0, 40).Split((char[]?)null, 5, StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("P5", words[0]);
        var (width, height) = (int.Parse(words[1], null), int.Parse(words[2], null));
        return (width, height, pgm[^(width * height)..]);
    }
}
