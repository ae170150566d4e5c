using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Runs;

/// <summary>What an estimated peak says of its own uncertainty holds: over made-up runs of all sorts, 95 % intervals hold the true peak in about 95 of 100.</summary>
public sealed class PeakCoverageTests(ITestOutputHelper output)
{
    [Fact]
    public void Stated_intervals_cover_what_they_say_for_sensors_of_half_a_millisecond_to_five()
    {
        var told = Enumerable.Range(0, 400).Select(MadeUpPeak.Draw)
            .Select(made => (Made: made, Peak: PeakEstimator.Estimate(made.Run, TimeSpan.FromSeconds(made.Lag), Pressure.FromBar(made.Step)))).ToList();
        foreach (var group in told.GroupBy(t => $"{t.Peak.Method}, {(t.Made.PulseHertz > 0 ? "pulsing" : "steady")}, {(t.Made.Lag > 2e-3 ? "slow" : "quick")}").OrderBy(g => g.Key, StringComparer.Ordinal))
            Say(group.Key, [.. group]);
        foreach (var (made, peak) in told.Where(t => t.Peak.Standard is { } s && Math.Abs(t.Peak.Value.Bar - t.Made.TrueBar) > 1.96 * s.Bar))
            output.WriteLine($"  outside: {peak.Method} {peak.Value.Bar - made.TrueBar:0.0} ± {peak.Standard!.Value.Bar:0.0}, highest {peak.Highest.Bar - made.TrueBar:0.0}; lag {1e3 * made.Lag:0.0} ms, {made.Rate:0} Hz, noise {made.Noise:0.0}, step {made.Step:0.00}, rise {made.Rise:0}, pulses {made.PulseHertz:0}, opening {1e3 * made.Opening:0.0}");
        foreach (var group in new[] { told.Where(t => t.Made.PulseHertz > 0), told.Where(t => t.Made.PulseHertz == 0) })
        {
            var stated = group.Where(t => t.Peak.Standard is not null).ToList();
            Assert.InRange(Covered(stated), 0.90, 0.99);
            Assert.True(RootMeanSquare(stated.Select(t => t.Peak.Value.Bar - t.Made.TrueBar)) < 0.5 * RootMeanSquare(stated.Select(t => t.Peak.Highest.Bar - t.Made.TrueBar)));
        }

        Assert.InRange(told.Count(t => t.Peak.Standard is null), 0, 40);
    }

    private void Say(string name, List<(MadeUpPeak Made, PeakEstimate Peak)> group)
    {
        var off = group.Select(t => t.Peak.Value.Bar - t.Made.TrueBar).ToList();
        output.WriteLine($"{name}: {group.Count} runs, highest {group.Average(t => t.Peak.Highest.Bar - t.Made.TrueBar):0.0}, estimated {off.Average():0.0}, root mean square {RootMeanSquare(off):0.0}, "
            + $"said {RootMeanSquare(group.Select(t => t.Peak.Standard?.Bar ?? 0)):0.0} bar, covered {100 * Covered(group):0} %");
    }

    private static double Covered(List<(MadeUpPeak Made, PeakEstimate Peak)> group) =>
        group.Count(t => t.Peak.Standard is { } s && Math.Abs(t.Peak.Value.Bar - t.Made.TrueBar) <= 1.96 * s.Bar) / (double)group.Count;

    private static double RootMeanSquare(IEnumerable<double> values) => Math.Sqrt(values.Average(v => v * v));
}
