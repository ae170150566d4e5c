using Ramwright.Instruments.Runs;

namespace Ramwright.Instruments.Tests.Runs;

/// <summary>Runs whose true peak is known: a steady rise or a pump with one piston, a relief that opens within a millisecond or so and lets oil out by the orifice law, seen through a sensor. All invented.</summary>
/// <param name="Lag">Time constant of the sensor, s.</param>
/// <param name="Rate">Samples per second.</param>
/// <param name="Noise">Standard deviation of the noise, bar.</param>
/// <param name="Step">Step of the readings, bar.</param>
/// <param name="Rise">The steepest rise, bar/s.</param>
/// <param name="PulseHertz">Pump strokes a second; zero for a steady rise.</param>
/// <param name="Opening">Time constant with which the relief opens, s.</param>
internal sealed record MadeUpPeak(double Lag, double Rate, double Noise, double Step, double Rise, double PulseHertz, double Opening)
{
    public double TrueBar { get; private init; }

    public PressureSample[] Run { get; private init; } = [];

    /// <summary>Draws the figures of one run; the same for the same number.</summary>
    public static MadeUpPeak Draw(int number)
    {
        var chance = new Random(70_001 + number);
        double Log(double least, double most) => least * Math.Pow(most / least, chance.NextDouble());
        var drawn = new MadeUpPeak(Log(0.5e-3, 5e-3), Log(1e3, 20e3), Log(0.5, 3), Log(0.1, 1), Log(500, 9_000), number % 2 == 0 ? 0 : Log(20, 60), Log(0.2e-3, 1.5e-3));
        return drawn.Played(chance);
    }

    private MadeUpPeak Played(Random chance)
    {
        const double Fine = 5e-6, Gain = 4e4; // bar/s of fall at 700 bar with the relief wide open, twice
        var (opens, phase, fall) = (680 + (40 * chance.NextDouble()), chance.NextDouble(), Gain * (1 + chance.NextDouble()));
        var seconds = Math.Min(0.3, 0.25 * opens / Rise);
        var (p, peak, since) = (opens - (Rise * seconds), 0.0, double.NegativeInfinity);
        var (y, next, t) = (p - (Rise * Lag), chance.NextDouble() / Rate, 0.0);
        var samples = new List<PressureSample>();
        while (!(since > 0.015))
        {
            // One piston delivers in half of each turn, as a half sine.
            var turn = (phase + (PulseHertz * t)) % 1;
            var rise = PulseHertz > 0 ? Rise * Math.Max(0, Math.Sin(2 * Math.PI * turn)) : Rise;
            var escapes = since >= 0 ? fall * (1 - Math.Exp(-since / Opening)) * Math.Sqrt(Math.Max(p, 0) / 700) : 0;
            p = Math.Max(0, p + (Fine * (rise - escapes)));
            since = since >= 0 ? since + Fine : p >= opens ? 0 : since;
            peak = Math.Max(peak, p);
            y += (p - y) * (1 - Math.Exp(-Fine / Lag));
            t += Fine;
            if (t < next)
                continue;
            next += 1 / Rate;
            var normal = Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
            samples.Add(new(t, Step * Math.Round((y + (Noise * normal)) / Step)));
        }

        return this with { TrueBar = peak, Run = [.. samples] };
    }
}
