using System.Diagnostics;
using System.Text;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Signing;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The printed code, rasterised by poppler at a poor printer's 150 dots per inch and read by ZBar, which is no part of this program.</summary>
public sealed class PrintedCodeTests
{
    [Fact]
    public void Is_read_back_from_a_print_of_150_dots_per_inch()
    {
        for (var i = 0; i < 12; i++) // each bears another signature
        {
            var report = SignedReport.Of(Proofs.Report, PaperSize.A4, UnitSystem.Metric, Signed.Key);
            Assert.Equal(report.Code, ReadBack(report.Pdf));
        }
    }

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

    private static string ReadBack(byte[] pdf)
    {
        using var folder = new Folder();
        var path = folder.Write("report.pdf", pdf);
        _ = Say("pdftoppm", "-r", "150", "-gray", "-f", "1", "-l", "1", "-singlefile", path, Path.Combine(folder.Path, "page"));
        return Say("zbarimg", "-q", "--raw", "-Sdisable", "-Sqr.enable", Path.Combine(folder.Path, "page.pgm")).TrimEnd('\n');
    }

    private static string Say(string program, params string[] words)
    {
        using var run = Process.Start(new ProcessStartInfo(program, words) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        run.ErrorDataReceived += (_, _) => { }; // ZBar looks for a message bus and grumbles
        run.BeginErrorReadLine();
        var said = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return said;
    }
}
