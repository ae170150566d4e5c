using System.Text;
using System.Text.RegularExpressions;
using Ramwright.Paper.Signing;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The signed file, looked at by poppler, qpdf and OpenSSL, which are no part of this program.</summary>
public sealed partial class SignedPdfTests
{
    private static byte[] Pdf => Signed.Report.Pdf;

    [Fact]
    public void Poppler_finds_one_valid_signature_over_the_whole_file()
    {
        var said = Run.Tool("pdfsig", Pdf, "-nocert", "FILE");
        Assert.Contains("Signature #1", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Signature #2", said, StringComparison.Ordinal);
        Assert.Contains("Signature Validation: Signature is Valid.", said, StringComparison.Ordinal);
        Assert.Contains("Total document signed", said, StringComparison.Ordinal);
        Assert.Contains("ETSI.CAdES.detached", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Poppler_finds_a_changed_byte()
    {
        var changed = Pdf.AsSpan().ToArray();
        changed[Encoding.Latin1.GetString(changed).IndexOf("Samphire", StringComparison.Ordinal)] ^= 1;
        Assert.DoesNotContain("Signature is Valid", Run.Tool("pdfsig", changed, "-nocert", "FILE"), StringComparison.Ordinal);
    }

    // RFC 5652, read by OpenSSL: content and signature taken out of the file by its own byte range.
    [Fact]
    public void OpenSSL_verifies_the_signature_over_the_byte_range()
    {
        using var folder = new Folder();
        var range = ByteRange().Match(Encoding.Latin1.GetString(Pdf));
        var (open, close) = (int.Parse(range.Groups[1].Value, null), int.Parse(range.Groups[2].Value, null));
        var content = folder.Write("content", [.. Pdf[..open], .. Pdf[close..]]);
        var der = Convert.FromHexString(Encoding.Latin1.GetString(Pdf[(open + 1)..(close - 1)]));
        var cms = folder.Write("cms", der);
        Run.Tool("openssl", [], "cms", "-verify", "-noverify", "-binary", "-inform", "DER", "-in", cms, "-content", content, "-out", System.IO.Path.Combine(folder.Path, "out"));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Run.Tool("openssl", [], "cms", "-verify", "-noverify", "-binary", "-inform", "DER", "-in", cms, "-content", folder.Write("other", [.. Pdf[..open], .. Pdf[(close + 1)..]]), "-out", System.IO.Path.Combine(folder.Path, "out")));
    }

    [Fact]
    public void Pages_fonts_and_tags_survive()
    {
        var check = Run.Tool("qpdf", Pdf, "--check", "FILE");
        Assert.Contains("No syntax or stream encoding errors found", check, StringComparison.Ordinal);
        var sheet = Sheets.WrittenFiles.Render("proof", Paper.Sheets.PaperSize.A4, Metrology.Text.UnitSystem.Metric);
        Assert.Equal(2, Run.Pages(Pdf));
        Assert.Equal(Run.Pages(sheet), Run.Pages(Pdf));
        Assert.Equal(Names(sheet), Names(Pdf));
        Assert.Matches(@"Tagged:\s+yes", Run.Tool("pdfinfo", Pdf, "FILE"));
        Assert.Contains($"signed with the key {Signed.Key.Id} of the house", Run.Text(Pdf), StringComparison.Ordinal);
        Assert.Contains("takes the place of SM-0409-P0", Run.Text(Pdf), StringComparison.Ordinal);
        Assert.Contains("<pdfaid:part>3</pdfaid:part>", Encoding.Latin1.GetString(Pdf), StringComparison.Ordinal);

        static string Names(byte[] pdf) => string.Join('\n', Run.Tool("pdffonts", pdf, "FILE").Split('\n').Select(l => l.Split(' ')[0]));
    }

    [Fact]
    public void The_result_can_be_taken_out_by_any_reader_of_PDF()
    {
        using var folder = new Folder();
        var path = System.IO.Path.Combine(folder.Path, "result.json");
        Assert.Contains(ProofResult.FileName, Run.Tool("pdfdetach", Pdf, "-list", "FILE"), StringComparison.Ordinal);
        Run.Tool("pdfdetach", Pdf, "-savefile", ProofResult.FileName, "-o", path, "FILE");
        Assert.Equal(Signed.Report.Result, File.ReadAllBytes(path));
    }

    [Fact]
    public void No_changed_byte_passes_as_genuine()
    {
        Assert.IsType<PaperAnswer.Genuine>(PaperCheck.Of(Pdf, Signed.List));
        var from = Encoding.Latin1.GetString(Pdf).IndexOf("/Type/Sig/", StringComparison.Ordinal);
        foreach (var at in Enumerable.Range(0, from).Where(i => i % 523 == 0).Concat(Enumerable.Range(from, Pdf.Length - from).Where(i => i < from + 2400 || i % 7 == 0)))
        {
            var changed = Pdf.AsSpan().ToArray();
            changed[at] ^= 1;
            Assert.False(PaperCheck.Of(changed, Signed.List) is PaperAnswer.Genuine or PaperAnswer.Superseded, $"byte {at} of {Pdf.Length}");
        }
    }

    [Fact]
    public void Bytes_put_after_the_end_or_taken_off_are_found()
    {
        Assert.IsType<PaperAnswer.Altered>(PaperCheck.Of([.. Pdf, .. "\n%%EOF\n"u8], Signed.List));
        Assert.IsType<PaperAnswer.Altered>(PaperCheck.Of(Pdf.AsSpan(0, Pdf.Length - 1), Signed.List));
        Assert.IsType<PaperAnswer.Unknown>(PaperCheck.Of(Sheets.WrittenFiles.Render("proof", Paper.Sheets.PaperSize.A4, Metrology.Text.UnitSystem.Metric), Signed.List));
    }

    [GeneratedRegex(@"/ByteRange\[0+ (\d+) (\d+) \d+\]")]
    private static partial Regex ByteRange();
}
