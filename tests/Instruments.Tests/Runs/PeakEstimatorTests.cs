using System.Globalization;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Runs;

/// <summary>What stands between a true peak and its highest reading is taken away, and no more.</summary>
public sealed class PeakEstimatorTests(ITestOutputHelper output)
{
    // Expected maximum of n standard normal values: Harter, Biometrika 48 (1961) 151-165, Table 1 (values from memory).
    [Theory]
    [InlineData(10, 1.53875)]
    [InlineData(20, 1.86748)]
    [InlineData(50, 2.24907)]
    public void The_highest_of_many_noisy_readings_is_too_high_and_the_estimate_is_not(int n, double expectedMaximum)
    {
        const double Noise = 1.2;
        var (raw, estimated) = (new List<double>(), new List<double>());
        for (var seed = 0; seed < 800; seed++)
        {
            var chance = new Random((1_000 * n) + seed);
            // A steep rise, n samples at 700 bar, a steep fall: the relief gives way slowly.
            var run = Sampled(t => t < 0.1 ? 7_000 * t : t < 0.1 + (n * 1e-3) ? 700 : Math.Max(0, 700 - (60_000 * (t - 0.1 - (n * 1e-3)))), 0, 1e-3, Noise, 0.13 + (n * 1e-3), chance, offset: 0.5e-3);
            var peak = PeakEstimator.Estimate(run, TimeSpan.Zero, default);
            raw.Add(peak.Highest.Bar - 700);
            estimated.Add(peak.Value.Bar - 700);
        }
        output.WriteLine($"n {n}: highest {raw.Average():0.00}, estimated {estimated.Average():0.00} ± {Deviation(estimated):0.00} bar");
        Assert.Equal(expectedMaximum * Noise, raw.Average(), 0.12);
        Assert.InRange(estimated.Average(), -0.5 * Noise, 0.5 * Noise);
    }

    [Theory]
    [InlineData(0, 1e-3, 1.2, 9_000)]
    [InlineData(1e-3, 1e-3, 1.2, 9_000)]
    [InlineData(1e-3, 1e-4, 1.2, 9_000)]
    [InlineData(2e-3, 5e-4, 0.6, 4_000)]
    [InlineData(4e-3, 1e-3, 1.2, 2_000)]
    public void A_steady_rise_seen_through_a_lag_is_corrected(double lag, double interval, double noise, double rise)
    {
        var (raw, estimated, standard, unfitted) = (new List<double>(), new List<double>(), new List<double>(), 0);
        for (var seed = 0; seed < 200; seed++)
        {
            var chance = new Random(seed);
            var corner = 0.06 + (interval * chance.NextDouble());
            var run = Sampled(t => t < corner ? 700 - (rise * (corner - t)) : Math.Max(0, 700 - (85_000 * Opened(t - corner))), lag, interval, noise, corner + 0.03, chance);
            var peak = PeakEstimator.Estimate(run, TimeSpan.FromSeconds(lag), default);
            raw.Add(peak.Highest.Bar - 700);
            estimated.Add(peak.Value.Bar - 700);
            if (peak.Standard is { } said)
                standard.Add(said.Bar);
            unfitted += peak.Method == PeakMethod.HighestReading ? 1 : 0;
        }
        output.WriteLine($"lag {lag * 1e3} ms, every {interval * 1e3} ms, noise {noise}: highest {raw.Average():0.00}, estimated {estimated.Average():0.00} ± {Deviation(estimated):0.00} bar, said ± {standard.Average():0.00}");
        Assert.InRange(unfitted, 0, 2);
        Assert.InRange(estimated.Average(), -0.6, 0.6);
        Assert.True(RootMeanSquare(estimated) < 0.5 * RootMeanSquare(raw));
        Assert.InRange(Deviation(estimated) / Math.Sqrt(standard.Average(s => s * s)), 0.45, 1.2); // what it says of itself is so, and allows for pulses that this rise has not
    }

    [Fact]
    public void Recorded_strokes_of_a_pulsing_pump_come_closer_to_their_true_peaks()
    {
        var (raw, estimated) = (new List<double>(), new List<double>());
        foreach (var (name, truth, lag, run) in Strokes())
        {
            var peak = PeakEstimator.Estimate(run, lag, Pressure.FromBar(0.25));
            var (high, found) = (peak.Highest.Bar - truth, peak.Value.Bar - truth);
            output.WriteLine($"{name}: highest {high:0.0}, estimated {found:0.0} ± {peak.Standard?.Bar:0.0} bar, {peak.Method}");
            if (name == "slow-sensor") // 4 ms
            {
                Assert.Equal(-12.6, high, 0.2);
                Assert.InRange(found, -6, 6);
                Assert.InRange(Math.Abs(found), 0, 2 * peak.Standard!.Value.Bar);
                continue;
            }
            raw.Add(high);
            estimated.Add(found);
        }
        output.WriteLine($"mean {raw.Average():0.00} -> {estimated.Average():0.00}, root mean square {RootMeanSquare(raw):0.00} -> {RootMeanSquare(estimated):0.00}, range {estimated.Min():0.0} .. {estimated.Max():0.0}");
        Assert.Equal(15, raw.Count);
        Assert.InRange(estimated.Average(), -1.5, 2);
        Assert.True(RootMeanSquare(estimated) < 0.45 * RootMeanSquare(raw));
    }

    [Fact]
    public void A_device_too_slow_for_the_fall_corrects_its_lag_along_the_rise()
    {
        // 1000 bar/s up to 699.5 bar, then nothing at the next sample; lag 5 ms holds the reading back by 5 bar, and half an interval is worth 10 bar.
        var run = Sampled(t => t < 0.6995 ? 1_000 * t : 0, 5e-3, 20e-3, 0.3, 0.8, new Random(1));
        var peak = PeakEstimator.Estimate(run, TimeSpan.FromMilliseconds(5), default);
        Assert.Equal(PeakMethod.Rise, peak.Method);
        Assert.Equal(peak.Highest.Bar + 5 + 10, peak.Value.Bar, 1.5);
        Assert.InRange(699.5, peak.Value.Bar - (2 * peak.Standard!.Value.Bar), peak.Value.Bar + (2 * peak.Standard.Value.Bar));
    }

    [Fact]
    public void Where_no_fit_holds_the_highest_reading_stands_and_says_so()
    {
        PressureSample[] one = [new(0, 700)];
        Assert.Equal((700, PeakMethod.HighestReading), (PeakEstimator.Estimate(one, TimeSpan.FromMilliseconds(1), default) is var p ? (p.Value.Bar, p.Method) : default));
        var wild = Enumerable.Range(0, 40).Select(i => new PressureSample(i * 1e-3, i % 2 == 0 ? 300 : 650 + i)).ToArray();
        Assert.Equal(PeakMethod.HighestReading, PeakEstimator.Estimate(wild, TimeSpan.FromMilliseconds(1), default).Method);
    }

    [Fact]
    public void Noise_is_known_from_the_rise_itself()
    {
        var run = Sampled(t => 3_000 * t, 0, 1e-3, 1.2, 0.22, new Random(3));
        Assert.Equal(1.2, PeakEstimator.Noise(run, run.Length - 2), 0.3);
    }

    /// <summary>A true pressure seen through an exact first-order lag (fine Euler steps), sampled, with normal noise.</summary>
    internal static PressureSample[] Sampled(Func<double, double> pressure, double lag, double interval, double noise, double until, Random chance, double offset = 0)
    {
        var samples = new List<PressureSample>();
        const int Fine = 20;
        var y = pressure(0) - (lag * (pressure(1e-6) - pressure(0)) / 1e-6);
        for (var i = 0; (i * interval) + offset < until; i++)
        {
            var t = (i * interval) + offset;
            samples.Add(new(t, (lag > 0 ? y : pressure(t)) + (noise * Normal(chance))));
            for (var k = 0; k < Fine && lag > 0; k++)
                y += (pressure(t + ((k + 0.5) * interval / Fine)) - y) * (1 - Math.Exp(-interval / Fine / lag));
        }
        return [.. samples];
    }

    /// <summary>A fall that comes to its speed with a time constant of 0.5 ms, as a relief opens; 1 bar/s of it, u in seconds.</summary>
    private static double Opened(double u) => u - (0.5e-3 * (1 - Math.Exp(-u / 0.5e-3)));

    internal static IEnumerable<(string Name, double TrueBar, TimeSpan Lag, PressureSample[] Run)> Strokes() =>
        File.ReadLines(Path.Combine(Checkout.Root, "tests", "Instruments.Tests", "Runs", "strokes.csv"))
            .Where(l => l[0] != '#').Skip(1).Select(l => l.Split(',')).GroupBy(f => f[0], StringComparer.Ordinal)
            .Select(g => (g.Key, Number(g.First()[1]), TimeSpan.FromMilliseconds(Number(g.First()[2])), g.Select(f => new PressureSample(Number(f[3]), Number(f[4]))).ToArray()));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());

    private static double Deviation(List<double> values) => Math.Sqrt(values.Sum(v => (v - values.Average()) * (v - values.Average())) / (values.Count - 1));

    private static double RootMeanSquare(List<double> values) => Math.Sqrt(values.Average(v => v * v));
}
