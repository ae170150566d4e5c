using System.Text;
using System.Text.RegularExpressions;
using Ramwright.Paper.Signing;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Signing;

public sealed class PaperCheckTests
{
    private static readonly byte[] Result = Signed.Report.Result;
    private static readonly string Code = Signed.Report.Code;

    [Fact]
    public void File_result_and_code_are_each_genuine_and_say_the_same()
    {
        foreach (var paper in new[] { Signed.Report.Pdf, Result, Encoding.UTF8.GetBytes(Code) })
        {
            var read = Assert.IsType<PaperAnswer.Genuine>(PaperCheck.Of(paper, Signed.List)).Paper;
            Assert.Equal(
                ["SM-0409-P1", "SM-0409", "Corrie 85", "1987", "conforms", "12", "700.3", "1.57", "679..721 bar", "2026-11-25", "M. Orme", "18204", "9f3c1ae0b7d24c88", "SM-0409-P0", Signed.Key.Id.Hex],
                [read.Number, read.Job, read.Tool, read.Serial, read.Verdict, read.Runs, read.Mean, read.Spread, read.Limits, read.Issued, read.Signatory, read.LedgerEntry, read.LedgerHead, read.Replaces, read.Key]);
        }
    }

    [Fact]
    public void A_result_may_be_indented_anew_but_no_figure_changed()
    {
        var text = Encoding.UTF8.GetString(Result);
        Assert.IsType<PaperAnswer.Genuine>(PaperCheck.Of(CanonicalJson.Write(CanonicalJson.Read(Result)), Signed.List));
        foreach (var (was, now) in new[] { ("\"conforms\"", "\"undecided\""), ("701.2", "701.3"), ("M. Orme", "M. Orne"), ("\"holds\": true", "\"holds\": false"), ("\"budget\": [", "\"budget\": [{},") })
            Assert.IsType<PaperAnswer.Altered>(PaperCheck.Of(Encoding.UTF8.GetBytes(ReplaceFirst(text, was, now)), Signed.List));
    }

    [Fact]
    public void A_code_survives_line_breaks_and_small_letters_but_no_changed_sign()
    {
        var broken = Regex.Replace(Code, ".{40}", "$0 \r\n").ToLowerInvariant();
        Assert.IsType<PaperAnswer.Genuine>(PaperCheck.Of(Encoding.UTF8.GetBytes(broken), Signed.List));
        for (var at = ProofCode.Mark.Length; at < Code.Length; at++)
        {
            var changed = Code[..at] + (Code[at] == 'A' ? 'B' : 'A') + Code[(at + 1)..];
            Assert.False(PaperCheck.Of(Encoding.UTF8.GetBytes(changed), Signed.List) is PaperAnswer.Genuine, $"sign {at}");
        }
    }

    [Fact]
    public void A_key_that_is_not_on_the_list_is_unknown_not_false()
    {
        using var other = HouseKey.Make("another house", House.Noon);
        var list = Signed.List with { Keys = [new(other.Id, [.. other.PublicKey], new(2026, 11, 1))] };
        foreach (var paper in new[] { Signed.Report.Pdf, Result, Encoding.UTF8.GetBytes(Code) })
            Assert.Contains(Signed.Key.Id.Hex, Assert.IsType<PaperAnswer.Unknown>(PaperCheck.Of(paper, list)).What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_of_another_under_the_name_of_ours_is_found()
    {
        using var other = HouseKey.Make("another house", House.Noon);
        var list = Signed.List with { Keys = [Signed.List.Keys[0] with { PublicKey = [.. other.PublicKey] }] };
        foreach (var paper in new[] { Signed.Report.Pdf, Result, Encoding.UTF8.GetBytes(Code) })
            Assert.IsNotType<PaperAnswer.Genuine>(PaperCheck.Of(paper, list));
    }

    [Fact]
    public void Revoked_comes_before_superseded_and_superseded_before_genuine()
    {
        var replaced = Signed.List with { Superseded = [new("SM-0409-P1", "SM-0409-P2")] };
        Assert.Equal("SM-0409-P2", Assert.IsType<PaperAnswer.Superseded>(PaperCheck.Of(Signed.Report.Pdf, replaced)).By);
        var revoked = replaced with { Keys = [replaced.Keys[0] with { Revoked = new(new(2026, 12, 1), "the laptop was stolen") }] };
        Assert.Equal("the laptop was stolen", Assert.IsType<PaperAnswer.Revoked>(PaperCheck.Of(Signed.Report.Pdf, revoked)).Why.Why);
    }

    // Whoever has a revoked key could otherwise wrap pages of his own around an honest result.
    [Fact]
    public void An_honest_code_in_a_result_of_another_key_is_found()
    {
        using var stolen = HouseKey.Make("Saltmarsh Tool Service", House.Noon);
        var list = Signed.List with { Keys = [new(stolen.Id, [.. stolen.PublicKey], new(2026, 1, 1), new(2026, 11, 1)), .. Signed.List.Keys] };
        var wrapped = ProofResult.Write(Proofs.Report with { Verdict = Proofs.Conforms with { Runs = 99 } }, Code, stolen);
        Assert.Contains("two keys", Assert.IsType<PaperAnswer.Altered>(PaperCheck.Of(wrapped, list)).What, StringComparison.Ordinal);
        var forged = SignedPdf.Write(Sheets.WrittenFiles.Render("proof", Paper.Sheets.PaperSize.A4, Metrology.Text.UnitSystem.Metric), stolen, "M. Orme", House.Noon, [new(ProofResult.FileName, "application/json", "honest", Result)]);
        Assert.Contains("two keys", Assert.IsType<PaperAnswer.Altered>(PaperCheck.Of(forged, list)).What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("{}")]
    [InlineData("RW1:")]
    [InlineData("RW1:ABC0")]
    public void What_is_no_paper_is_said_to_be_none(string text) => Assert.IsType<PaperAnswer.NoPaper>(PaperCheck.Of(Encoding.UTF8.GetBytes(text), Signed.List));

    private static string ReplaceFirst(string text, string was, string now)
    {
        var at = text.IndexOf(was, StringComparison.Ordinal);
        Assert.True(at >= 0, was);
        return text[..at] + now + text[(at + was.Length)..];
    }
}
