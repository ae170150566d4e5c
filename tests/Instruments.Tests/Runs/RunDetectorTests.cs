using System.Globalization;
using CsCheck;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Runs;

/// <summary>One stroke is one run. A script draws the pressure, a point every 10 ms; answers are read from left to right.</summary>
public sealed class RunDetectorTests
{
    private static readonly RunRule s_rule = new(Pressure.FromBar(50), Pressure.FromBar(25), Pressure.FromBar(350));

    [Theory]
    [InlineData("0*20 stroke700 0*20", "700")]
    [InlineData("0*20 stroke700 0*20 stroke690 0*20", "700 690")]
    [InlineData("0*20 stroke300 0*20", "ShortOfFull")]
    [InlineData("0*20 20*50 40*50 20*50 0*20", "")] // never above the start
    [InlineData("0*20 stroke700 0*2", "")] // not yet seen at rest
    [InlineData("300*10 stroke700 0*20 stroke690 0*20", "BeginningNotSeen 690")]
    [InlineData("30*10 0*20 stroke700 0*20", "700")] // a rest pressure between the thresholds is no run
    [InlineData("0*20 60*1 0*20", "Jump")]
    [InlineData("0*20 650*1 0*20", "Jump")]
    [InlineData("0*20 650*3 0*20", "Jump")]
    [InlineData("0*20 ramp500 1500*1 500*5 0*20", "Jump")] // one reading far above both neighbours
    [InlineData("0*20 ramp400 0*2 stroke700 0*20", "700")] // two readings dropped out low on the way: still one run
    [InlineData("0*20 ramp680 0*5 650*8 0*20", "Gap")] // dropped out where the pressure was high
    [InlineData("0*20 stroke700 lost 0*20 stroke690 0*20", "Interrupted 690")]
    [InlineData("0*20 ramp300 lost 400*5 0*20 stroke690 0*20", "Interrupted BeginningNotSeen 690")]
    [InlineData("0*20 lost 0*20 stroke690 0*20", "690")] // lost at rest: nothing was under way
    [InlineData("0*20 700*13000 0*20 stroke690 0*20", "TooLong 690")]
    [InlineData("0*20 20*10 45*10 55*10 45*10 30*10 55*10 20*20", "ShortOfFull")] // noise between the thresholds parts nothing
    public void Strokes_are_told_as_runs(string script, string told) => Assert.Equal(told, Play(script));

    [Fact]
    public void Runs_are_found_whatever_rests_and_peaks_there_are() =>
        Gen.Select(Gen.Int[100, 900], Gen.Int[8, 40]).Array[1, 12].ForAll(runs =>
        {
            var script = "0*10 " + string.Join(' ', runs.Select(r => $"stroke{r.Item1} 0*{r.Item2}"));
            Assert.Equal(string.Join(' ', runs.Select(r => r.Item1 < 350 ? "ShortOfFull" : r.Item1.ToString(CultureInfo.InvariantCulture))), Play(script));
        }, iter: 300);

    [Fact]
    public void Whatever_comes_each_run_taken_was_up_and_down_and_memory_is_bounded() =>
        Gen.Select(Gen.Int[0, 800].Array[1, 200], Gen.Int[0, 199]).ForAll((bars, lostAt) =>
        {
            var (detector, taken, crossings) = (new RunDetector(s_rule, TimeSpan.Zero, default), 0, 0);
            for (var i = 0; i < bars.Length; i++)
            {
                if (i == lostAt)
                    detector.Lose();
                if (detector.Add(new(i * 0.03, bars[i])) is RunOutcome.Full)
                    taken++;
                crossings += i > 0 && bars[i - 1] <= 50 && bars[i] > 50 ? 1 : 0;
            }
            Assert.True(taken <= crossings);
        }, iter: 5_000);

    [Fact]
    public void A_bug_in_the_caller_throws()
    {
        Assert.Throws<ArgumentException>(() => new RunDetector(s_rule, TimeSpan.Zero, default).Add(new(0, double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RunRule(Pressure.FromBar(25), Pressure.FromBar(25), Pressure.FromBar(350)));
    }

    private static string Play(string script)
    {
        var (detector, told, t) = (new RunDetector(s_rule, TimeSpan.Zero, default), new List<string>(), 0.0);
        foreach (var word in script.Split(' '))
        {
            if (word == "lost")
            {
                Tell(detector.Lose());
                t += 3;
                continue;
            }
            foreach (var bar in Drawn(word))
                Tell(detector.Add(new(t += 0.01, bar)));
        }
        return string.Join(' ', told);

        void Tell(RunOutcome? outcome)
        {
            if (outcome is RunOutcome.Full full)
                told.Add(full.Peak.Value.Bar.ToString("0", CultureInfo.InvariantCulture));
            else if (outcome is RunOutcome.NotTaken not)
                told.Add(not.Why.ToString());
        }
    }

    /// <summary><c>20*50</c>: 50 samples of 20 bar; <c>ramp500</c>: up to 500 bar; <c>stroke700</c>: up to 700 bar and half way down.</summary>
    private static IEnumerable<double> Drawn(string word)
    {
        if (word.StartsWith("ramp", StringComparison.Ordinal))
            return Ramp(int.Parse(word.AsSpan(4), CultureInfo.InvariantCulture));
        if (word.StartsWith("stroke", StringComparison.Ordinal))
            return Ramp(int.Parse(word.AsSpan(6), CultureInfo.InvariantCulture));
        var (bar, count) = word.Split('*') is [var b, var n] ? (b, n) : throw new FormatException(word);
        return Enumerable.Repeat((double)int.Parse(bar, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture));

        static IEnumerable<double> Ramp(int to) => Enumerable.Range(1, 40).Select(i => to * i / 40.0);
    }
}
