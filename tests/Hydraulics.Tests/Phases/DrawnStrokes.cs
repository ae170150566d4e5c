using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Tests.Phases;

/// <summary>Strokes of the reference tool with faults, drawn from a fixed seed, recorded by loggers of many rates with noise, steps and zeros that are off. All invented.</summary>
internal sealed record DrawnStroke(int Number, Stroke Stroke, Recording Recording, double RowsPerSecond, double NoisePascals, bool HasConnector, string Words)
{
    private static readonly double[] Rates = [100, 250, 500, 1_000, 1_000, 2_000, 5_000, 20_000];

    /// <summary>The first strokes of the series; the same on every run.</summary>
    public static IEnumerable<DrawnStroke> First(int count)
    {
        var random = new Random(20261125);
        for (var number = 1; number <= count; number++)
        {
            var tool = Tool(random, out var faults);
            var connector = random.NextDouble() < 0.25;
            var pause = random.NextDouble() < 0.6;
            var rate = Rates[random.Next(Rates.Length)];
            var plan = new StrokePlan
            {
                Load = connector ? new StrokeLoad.Connector(Between(random, 25e3, 55e3), Between(random, 5e-3, 12e-3), Between(random, 2e-3, 5e-3)) : new StrokeLoad.DiesClose(),
                PausePascals = pause ? Between(random, 200e5, 500e5) : null,
                PauseSeconds = Between(random, 0.5, 4),
                LeadSeconds = Between(random, 0.15, 0.6),
                GiveUpSeconds = 12,
                SamplesPerSecond = rate,
            };
            var stroke = StrokeSimulator.Run(tool, plan);
            var noise = (Bar: Between(random, 0.1, 3), Amperes: Between(random, 0.05, 0.5), OffBar: Between(random, -8, 8), OffAmperes: Between(random, -1, 1));
            var recording = Recorded(stroke, random, noise.Bar * 1e5, noise.Amperes, noise.OffBar * 1e5, noise.OffAmperes);
            yield return new(number, stroke, recording, rate, noise.Bar * 1e5, connector,
                FormattableString.Invariant($"no. {number}: {rate:0} Hz, noise {noise.Bar:0.0} bar {noise.Amperes:0.00} A, {(connector ? "connector, " : "")}{(plan.PausePascals is { } p ? $"pause at {p / 1e5:0} bar for {plan.PauseSeconds:0.0} s, " : "")}{string.Join(", ", faults)}"));
        }
    }

    private static StrokeParameters Tool(Random random, out List<string> faults)
    {
        var healthy = Strokes.ReferenceTool.Healthy;
        var tool = healthy;
        faults = [];
        for (var i = random.Next(3); i > 0; i--)
        {
            (tool, var name) = random.Next(12) switch
            {
                0 => (tool with { Oil = tool.Oil with { AirShare = Between(random, 0.005, 0.06) } }, "air"),
                1 => (tool with { BypassLeak = Leak(random, -16.5, -14.8) }, "bypass"),
                2 => (tool with { DeliveryLeak = Leak(random, -16, -14.3) }, "delivery check"),
                3 => (tool with { InletLeak = Leak(random, -16, -14.3) }, "inlet check"),
                4 => (tool with { Filling = Between(random, 0.45, 1) }, "filling"),
                5 => (tool with { ReliefPascals = Between(random, 450e5, 800e5) }, "relief"),
                6 => (tool with { ClosingRatio = Between(random, 0.02, 0.5) }, "relief seat"),
                7 => (tool with { SupplyVolts = Between(random, 13, 20), ResistanceOhms = Between(random, 0.04, 0.12) }, "drive"),
                8 => (tool with { UsableOilCubicMetres = Between(random, 12e-6, 40e-6) }, "oil"),
                9 => (tool with { DryFrictionNewtons = Between(random, 150, 2000) }, "ram friction"),
                10 => (tool with { SealFrictionShare = Between(random, 0.01, 0.08) }, "seal friction"),
                _ => (tool with { Inlet = InletKind.Port, InletLeak = 0 }, "port"),
            };
            faults.Add(name);
        }

        return tool with { SensorSeconds = Between(random, 0.5e-3, 4e-3) };
    }

    private static Recording Recorded(Stroke stroke, Random random, double noisePascals, double noiseAmperes, double offPascals, double offAmperes)
    {
        const double StepPascals = 0.25e5, StepAmperes = 0.1;
        var seconds = ImmutableArray.CreateBuilder<double>(stroke.Samples.Length);
        var pascals = ImmutableArray.CreateBuilder<double>(stroke.Samples.Length);
        var amperes = ImmutableArray.CreateBuilder<double>(stroke.Samples.Length);
        foreach (var sample in stroke.Samples)
        {
            var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            var angle = 2 * Math.PI * random.NextDouble();
            seconds.Add(sample.Seconds);
            pascals.Add(StepPascals * Math.Round((sample.ReadingPascals + offPascals + (noisePascals * radius * Math.Cos(angle))) / StepPascals));
            amperes.Add(StepAmperes * Math.Round((sample.Amperes + offAmperes + (noiseAmperes * radius * Math.Sin(angle))) / StepAmperes));
        }

        return new(seconds.ToImmutable(), pascals.ToImmutable(), amperes.ToImmutable());
    }

    private static double Between(Random random, double least, double most) => least + (random.NextDouble() * (most - least));

    private static double Leak(Random random, double least, double most) => Math.Pow(10, Between(random, least, most));
}
