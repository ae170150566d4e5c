using System.Text;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

/// <summary>What is true of every file: looked at by qpdf and poppler, which are no part of this program.</summary>
public sealed class WrittenFiles
{
    public static TheoryData<string, PaperSize> Sheets()
    {
        var data = new TheoryData<string, PaperSize>();
        foreach (var name in new[] { "proof", "work", "quote", "end", "sensor" })
        {
            data.Add(name, PaperSize.A4);
            data.Add(name, PaperSize.Letter);
        }

        return data;
    }

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<(string, PaperSize), byte[]> Made = new();

    private static byte[] Once(string name, PaperSize size) => Made.GetOrAdd((name, size), key => Render(key.Item1, key.Item2, UnitSystem.Metric));

    internal static byte[] Render(string name, PaperSize size, UnitSystem units) => name switch
    {
        "proof" => ProofReport.Render(Proofs.Report, size, units),
        "work" => WorkSheet.Render(Works.Sheet, size, units),
        "sensor" => SensorSheet.Render(SensorSheetTests.Input(7), size, units),
        "quote" => QuoteSheet.Render(Quotes.Sheet, size, units),
        _ => EndPaper.Render(EndPaperTests.Input(EndKind.ReturnedUnrepaired), size, units),
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Are_sound_to_the_last_stream(string name, PaperSize size)
    {
        var pdf = Once(name, size);
        var check = Run.Tool("qpdf", pdf, "--check", "FILE");
        Assert.Contains("No syntax or stream encoding errors found", check, StringComparison.Ordinal);
        var full = Run.Tool("qpdf", pdf, "--qdf", "--object-streams=disable", "FILE", "-"); // decodes every stream; a warning is exit 3
        Assert.Contains("/StructTreeRoot", full, StringComparison.Ordinal);
        Assert.Contains("/OutputIntents", full, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Carry_their_fonts_and_are_tagged(string name, PaperSize size)
    {
        var pdf = Once(name, size);
        var fonts = Run.Tool("pdffonts", pdf, "FILE").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToArray();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f =>
        {
            Assert.Contains("B612", f, StringComparison.Ordinal);
            Assert.Matches(@"Identity-H\s+yes yes yes", f); // embedded, subset, mapped to Unicode
        });
        var info = Run.Tool("pdfinfo", pdf, "FILE");
        Assert.Matches(@"Tagged:\s+yes", info);
        Assert.Matches(size == PaperSize.A4 ? @"Page size:\s+595\.\d+ x 841\.\d+ pts \(A4\)" : @"Page size:\s+612 x 792 pts \(letter\)", info);
        Assert.Matches(@"Title:\s+\S", info);
    }

    [Fact]
    public void Name_their_parts_for_those_who_do_not_see()
    {
        var structure = Run.Tool("pdfinfo", Once("proof", PaperSize.A4), "-struct-text", "FILE");
        foreach (var kind in new[] { "H1", "H2", "Table", "TR", "TH", "TD", "Figure", "P" })
            Assert.Matches($@"\n\s*{kind}\b", structure);
        var raw = Encoding.Latin1.GetString(Once("proof", PaperSize.A4));
        Assert.Contains("/Alt", raw, StringComparison.Ordinal);
    }

    [Fact]
    public void Survive_odd_signs_and_endless_words()
    {
        var job = House.Job with { Customer = "Łódź & Ünïcode <Œuvre> \u0007Power " + new string('W', 300), ConditionOnReceipt = "µ Ω ≤ ½ · ° € – “quoted” ⌀ 62 ∅ 漢字 \U0001F600 " + string.Join(' ', Enumerable.Repeat("very long condition", 400)) };
        var pdf = ProofReport.Render(Proofs.Report with { Job = job }, PaperSize.A4, UnitSystem.Metric);
        var text = Run.Text(pdf);
        Assert.Contains("µ Ω ≤ ½ · ° € – “quoted”", text, StringComparison.Ordinal);
        Assert.InRange(Run.Pages(pdf), 2, 12);
        Run.Tool("qpdf", pdf, "--check", "FILE");
    }

    [Fact]
    public void Keep_their_metadata_readable_whatever_the_names()
    {
        var pdf = QuoteSheet.Render(Quotes.Sheet with { House = new("Salt & <Marsh> \u0007 (\U0001F600)") }, PaperSize.A4, UnitSystem.Metric);
        var raw = Encoding.UTF8.GetString(pdf);
        var from = raw.IndexOf("<x:xmpmeta", StringComparison.Ordinal);
        var xml = System.Xml.Linq.XDocument.Parse(raw[from..(raw.IndexOf("</x:xmpmeta>", from, StringComparison.Ordinal) + 12)]);
        Assert.Contains("Salt and (Marsh)", xml.ToString(), StringComparison.Ordinal);
        Assert.Contains("conformance", xml.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Can_be_made_side_by_side()
    {
        var made = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => Render(i % 2 == 0 ? "proof" : "work", PaperSize.A4, UnitSystem.Metric), TestContext.Current.CancellationToken)));
        Assert.All(made, pdf => Assert.StartsWith("%PDF-1.", Encoding.Latin1.GetString(pdf, 0, 8), StringComparison.Ordinal));
        Assert.Equal(made[0], made[2]); // the same input, the same bytes
    }
}
