using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting.Tests;

public sealed class WorkedExamples
{
    private static readonly ReliefData Poppet = new()
    {
        ContactDiameter = Length.FromMillimetres(2.6),
        StemDiameter = Length.FromMillimetres(1.2),
        SpringRate = Stiffness.FromNewtonsPerMetre(25_000),
        Pitch = Length.FromMillimetres(0.75),
        ClockwiseRaises = true,
    };

    // Force balance of a poppet as in any text on hydraulics: pressure × (contact area − stem area) = spring force. By hand:
    // area π/4·(2.6² − 1.2²) mm² = 4.178 mm²; one turn adds 25 N/mm × 0.75 mm = 18.75 N; 18.75 N / 4.178 mm² = 4.487 MPa = 44.87 bar
    [Fact]
    public void The_gain_before_any_run_is_the_force_of_one_turn_over_the_seat_area()
    {
        var advice = SettingAdvisor.Advise(Tools.Limits(679, 721, 735), Poppet, []);
        Assert.Equal(44.87, advice.PriorBarPerTurn, 0.005);
        Assert.Equal(SettingOutcome.RunFirst, advice.Outcome);
        Assert.Equal(-44.87, SettingAdvisor.Advise(Tools.Limits(679, 721, 735), Poppet with { ClockwiseRaises = false }, []).PriorBarPerTurn, 0.005);
    }

    // The same balance from a free spring: 80 % of 700 bar is 560 bar = 12.48 turns at 44.87 bar; the gain's spread shortens that until
    // 1 job in 1,000 would pass 735 bar: with a quarter of the prior at 25 % of the gain, z(0.004) = 2.65, 735/(1 + 2.65·0.25) = 442 bar or so = 9.8 turns.
    [Fact]
    public void After_a_rebuild_the_screw_starts_low_by_computation()
    {
        var first = Assert.IsType<FirstSetting.TurnIn>(FirstSetting.AfterRebuild(Tools.Limits(679, 721, 735), Poppet));
        Assert.False(first.FromStop);
        Assert.InRange(first.Turn.Turns, 9.4, 9.9);
        Assert.Equal(44.87 * first.Turn.Turns, first.Mean.Bar, 0.1);
        Assert.InRange(first.ChancePastMaximum, 0.0005, 0.001);
        Assert.IsType<FirstSetting.NoReliefData>(FirstSetting.AfterRebuild(Tools.Limits(679, 721, 735), null));
    }

    // Rise rate 9,000 bar/s × 2 ms of delay = 18 bar: the peak lies so far above the pressure at which the relief opens.
    [Fact]
    public void A_slow_relief_starts_lower_still()
    {
        var limits = Tools.Limits(679, 721, 735);
        var quick = (FirstSetting.TurnIn)FirstSetting.AfterRebuild(limits, Poppet);
        var slow = (FirstSetting.TurnIn)FirstSetting.AfterRebuild(limits, Poppet, new() { PeakAboveOpening = Pressure.FromBar(9_000 * 0.002) });
        Assert.True(slow.Turn < quick.Turn);
        Assert.Equal(18 + 44.87 * slow.Turn.Turns, slow.Mean.Bar, 0.1);
    }

    [Fact]
    public void What_a_device_misses_of_a_peak_moves_the_upper_limits_alone()
    {
        SettingRun[] runs = [new(Angle.FromTurns(0), Pressure.FromBar(612))];
        var full = SettingAdvisor.Advise(Tools.Limits(679, 721, 735), Poppet, runs);
        var missing = SettingAdvisor.Advise(Tools.Limits(679, 721, 735), Poppet, runs, new() { PeakAboveReading = Pressure.FromBar(14) });
        Assert.True(missing.Turn < full.Turn);
        Assert.True(missing.ChancePastMaximum <= 0.001);
    }

    [Fact]
    public void The_advice_reads_as_a_technician_says_it()
    {
        var advice = SettingAdvisor.Advise(Tools.Limits(679, 721, 735), Poppet, [new(Angle.FromTurns(0), Pressure.FromBar(640))]);
        Assert.Matches(@"^turn clockwise 1 turn and \d+½?/12 \(\d+°\); then expect 69\d bar \(6\d\d to 7\d\d\)$", SettingWords.Headline(advice, UnitSystem.Metric));
        Assert.Contains(SettingWords.Lines(advice, UnitSystem.Metric), line => line == "screw: as found");
        Assert.DoesNotContain(SettingWords.Lines(advice, UnitSystem.Imperial), line => line.Contains("bar", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, "no turn")]
    [InlineData(0.2, "less than ½/12 (6°)")]
    [InlineData(0.5, "½/12 (15°)")]
    [InlineData(5, "5/12 (150°)")]
    [InlineData(15, "1 turn and 3/12 (450°)")]
    [InlineData(-24, "2 turns (720°)")]
    [InlineData(5.6666667, "about 5½/12 (170°)")]
    public void A_turn_reads_in_twelfths(double twelfths, string text) => Assert.Equal(text, Twelfths.Text(Twelfths.Of(twelfths)));
}
