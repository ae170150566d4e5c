using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class ProofReportTests
{
    // What a report has to say: ISO/IEC 17025:2017, 7.8.2.1 and 7.8.6 (list from memory), and the house's own promises.
    [Theory]
    [InlineData("Proof report")]
    [InlineData("not issued under accreditation")]
    [InlineData("conforms")]
    [InlineData("With 95 % confidence, at least 95 % of full runs stay above 679 bar")]
    [InlineData("4 bar at the lower and 4.4 bar at the upper limit")]
    [InlineData("Saltmarsh Tool Service")]
    [InlineData("Samphire Power")]
    [InlineData("Corrie 85, no. 1987")]
    [InlineData("SM-0409-P1")]
    [InlineData("leaking at the cap, complete, no damage seen")]
    [InlineData("23 Nov 2026")]
    [InlineData("25 Nov 2026, by J. Fenn")]
    [InlineData("22 °C")]
    [InlineData("31 °C at the first run, 38 °C at the last")]
    [InlineData("611.7 bar, mean of 3")]
    [InlineData("700.3 bar, mean of the proof")]
    [InlineData("Decision rule.")]
    [InlineData("k = 2.736")]
    [InlineData("At most 5 %", "at most 5 % of the tools")]
    [InlineData("ISO 16269-6")]
    [InlineData("695.3..705.3 bar")]
    [InlineData("FC-2, jaw block J85, no. 44-1207")]
    [InlineData("27 Aug 2026")]
    [InlineData("27 Feb 2027")]
    [InlineData("K 26-0831")]
    [InlineData("dies closed on blocks")]
    [InlineData("peak of each full run by force cell between jaw blocks")]
    [InlineData("0.4 bar, upward alone, added whole: 1,000 bar/s × 0.4 ms")]
    [InlineData("340 N")]
    [InlineData("8.24e-3 bar/N", "0.00824 bar/N")]
    [InlineData("√3")]
    [InlineData("lower limit up by 4 bar, upper limit down by 4.4 bar")]
    [InlineData("Nobody states what temperature does to it")]
    [InlineData("Output force")]
    [InlineData("the two agree")]
    [InlineData("guarded acceptance of the mean, w = U and the capture")]
    [InlineData("12 of the model, mean")]
    [InlineData("accepted wrongly")]
    [InlineData("512.6")]
    [InlineData("Run 5 void: The jaw block slipped; seen and written down before the value was read.")]
    [InlineData("1.57 bar (this tool's own)")]
    [InlineData("nothing flagged")]
    [InlineData("relief set +38°, locked, checked once more")]
    [InlineData("M. Orme, lead")]
    [InlineData("1 of 2")]
    [InlineData("Results relate only to the item tested")]
    [InlineData("An injection injury is an emergency at once")]
    [InlineData("no promise about connections made with the tool")]
    [InlineData("head 9f3c1ae0b7d24c8855aa01c3e7f09d1b2c3d4e5f60718293a4b5c6d7e8f90a1b")]
    public void Says(string words, string? instead = null) => Assert.Contains(instead ?? words, Shared.Value, StringComparison.Ordinal);

    private static readonly Lazy<string> Shared = new(() => Run.Text(ProofReport.Render(Proofs.Report, PaperSize.A4, UnitSystem.Metric)));

    [Fact]
    public void Shows_every_run()
    {
        foreach (var bar in Proofs.AsLeft.Concat(Proofs.AsFound))
            Assert.Contains(bar.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), Shared.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_no_next_due_date_unless_agreed()
    {
        Assert.DoesNotContain("next due", Shared.Value, StringComparison.Ordinal);
        var agreed = ProofReport.Render(Proofs.Report with { NextDueAsAgreed = new(2027, 11, 25) }, PaperSize.A4, UnitSystem.Metric);
        Assert.Contains("25 Nov 2027, as agreed with the customer", Run.Text(agreed), StringComparison.Ordinal);
    }

    // 679 bar = 9 848.06 psi, 721 bar = 10 457.22 psi with 1 psi = 6 894.757 Pa (NIST SP 811, B.8).
    [Fact]
    public void Speaks_imperial_throughout()
    {
        var text = Run.Text(ProofReport.Render(Proofs.Report, PaperSize.Letter, UnitSystem.Imperial));
        Assert.Contains("9,848", text, StringComparison.Ordinal);
        Assert.Contains("10,457 psi", text, StringComparison.Ordinal);
        Assert.Contains("72 °F", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" bar", text, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Bears_what_is_missing()
    {
        var bare = Proofs.Report with
        {
            AsFound = [],
            NoAsFound = "the tool would not build pressure",
            Reference = null,
            OutputForce = null,
            Risk = null,
            WorkDone = [],
            BenchTemperature = null,
            OilTemperatureFirst = null,
            OilTemperatureLast = null,
            ModelFingerprint = null,
            Device = new() { Kind = "port gauge", Id = "PG-1" },
            Job = House.Job with { Serial = null, Received = null, ConditionOnReceipt = null },
        };
        var text = Run.Text(ProofReport.Render(bare, PaperSize.A4, UnitSystem.Metric));
        Assert.Contains("As found: The tool would not build pressure.", text, StringComparison.Ordinal);
        Assert.Contains("Corrie 85, no number", text, StringComparison.Ordinal);
        Assert.Contains("date not recorded", text, StringComparison.Ordinal);
        Assert.Contains("Nothing was done to the tool", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_undecided_series_says_why_and_claims_nothing()
    {
        var undecided = Proofs.Conforms with
        {
            Conformity = Ramwright.Proving.Conformity.Undecided,
            Reasons = [new Ramwright.Proving.Reason.ScatterTooLarge(Metrology.Quantities.Pressure.FromBar(6.2), Metrology.Quantities.Pressure.FromBar(5.4)), new Ramwright.Proving.Reason.LongerSeriesWouldDecide(24, 0.8)],
            Claims = [.. Proofs.Conforms.Claims.Select(c => c with { ShareShown = 0.943, Holds = false })],
        };
        var text = Run.Text(ProofReport.Render(Proofs.Report with { Verdict = undecided }, PaperSize.A4, UnitSystem.Metric));
        Assert.Contains("undecided", text, StringComparison.Ordinal);
        Assert.Contains("6.2 bar", text, StringComparison.Ordinal);
        Assert.Contains("24 runs", text, StringComparison.Ordinal);
        Assert.Contains("95 % not shown", text, StringComparison.Ordinal);
        Assert.DoesNotContain("With 95 % confidence, at least", text, StringComparison.Ordinal);
    }
}
