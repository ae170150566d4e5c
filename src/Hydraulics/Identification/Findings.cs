using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>All that was found, as laws of probability: from the fits, the advance, the opening and what followed. Leaks and resistance by their logarithm.</summary>
internal sealed class Findings
{
    public required StrokeEvidence Evidence { get; init; }

    public required Mixture Filling { get; init; }

    public required bool FillingTold { get; init; }

    public required Mixture LogHold { get; init; }

    public required Mixture LogDelivery { get; init; }

    public required Mixture LogChamber { get; init; }

    public required Mixture LogBypass { get; init; }

    public required Mixture Air { get; init; }

    public required Mixture LogSoftness { get; init; }

    public required Mixture Volts { get; init; }

    public required Mixture LogOhms { get; init; }

    public required Mixture LogSeal { get; init; }

    /// <summary>Voltage left for the speed at 50 A as a share of the sound tool's.</summary>
    public required Mixture Strength { get; init; }

    /// <summary>Posterior probability that the relief weeps.</summary>
    public required double Weeps { get; init; }

    /// <summary>Where it begins to, Pa, likeliest.</summary>
    public required double WeepFromPascals { get; init; }

    public required AdvanceSigns Advance { get; init; }

    public required ClosingSigns? Closing { get; init; }

    /// <summary>Opening pressure in pascals; null when it was not seen.</summary>
    public required Mixture? Opening { get; init; }

    /// <summary>How many deviations of sensor and service data the rows lie off on the whole; about 1 where the model fits.</summary>
    public required double Misfit { get; init; }

    /// <summary>Voltages and times that a leak of 50 A: the current at which drives are compared.</summary>
    public const double StrengthAmperes = 50;

    /// <summary>What the reduced model may be off beyond noise: filling, leaks (ln), air, volts, resistance (ln).</summary>
    private const double FillingOff = 0.003, LeakOff = 0.10, AirOff = 0.0025, AirShareOff = 0.06, VoltsOff = 0.02, OhmsOff = 0.03, SealOff = 0.75;

    public static Findings Of(StrokeEvidence evidence, List<FittedLeaks> fits, (double Pascals, double Deviation)? opening)
    {
        var top = fits.Max(f => f.LogEvidence);
        var tool = evidence.Tool;
        var parts = fits.Where(f => f.LogEvidence > top - 20).Select(f => new Weighed(f, Math.Exp(f.LogEvidence - top), PositiveMatrix.Inverse(f.Best.Normal))).Where(w => w.Covariance is not null).ToList();
        var best = fits.MaxBy(f => f.LogEvidence)!;
        var state = best.Problem.StateOf(best.Best.Unknowns);
        Mixture Unknowns(int place, double off = 0, double share = 0) => new(parts.Select(p => (p.Weight, p.Mean(place), Hypot(p.Deviation(place), off, share * p.Mean(place)))));
        var builds = evidence.Builds;
        var sum = parts.Sum(p => p.Weight);
        return new Findings
        {
            Evidence = evidence,
            Filling = Unknowns(Unknown.Filling, FillingOff).Given(tool.Filling, 0.03, 0.9, 0.8),
            FillingTold = evidence.Turns is not null,
            LogHold = new(parts.Select(p => (p.Weight, p.LogStanding(tool, evidence), Hypot(p.LogStandingDeviation(tool, evidence), HoldOff(evidence), 0)))),
            LogDelivery = Unknowns(Unknown.LogDelivery, LeakOff),
            LogChamber = Unknowns(Unknown.LogChamber, LeakOff),
            LogBypass = Unknowns(Unknown.LogBypass, LeakOff),
            Air = Unknowns(Unknown.Air, evidence.Signal.Amperes is null || !evidence.TurnsAreSeen ? 2.5 * AirOff : AirOff, AirShareOff).Given(tool.Oil.AirShare, 0.004, 0.9, 0.1),
            LogSoftness = Unknowns(Unknown.LogSoftness),
            Volts = Unknowns(Unknown.Volts, VoltsOff),
            LogOhms = Unknowns(Unknown.LogOhms, OhmsOff),
            LogSeal = Unknowns(Unknown.LogSeal, SealOff),
            Strength = new(parts.Select(p => (p.Weight, p.Strength(tool), Hypot(p.StrengthDeviation(tool), 0.01, 0)))),
            Weeps = parts.Where(p => p.Fit.Leaks.Weep).Sum(p => p.Weight) / sum,
            WeepFromPascals = parts.Where(p => p.Fit.Leaks.Weep).MaxBy(p => p.Weight) is { } weep ? weep.Mean(Unknown.WeepShare) * evidence.OpeningPascals : 0,
            Advance = AdvanceSigns.Of(evidence, state),
            Closing = ClosingSigns.Of(evidence),
            Opening = opening is { } o ? Mixture.Of(o.Pascals, Hypot(o.Deviation, evidence.Signal.Amperes is null ? 5e5 : 1e5, 0)).Given(tool.ReliefPascals, 0.015 * tool.ReliefPascals, 0.85, 0.5 * tool.ReliefPascals) : null,
            Misfit = builds.Count == 0 || !evidence.TurnsAreSeen || evidence.Signal.Amperes is null ? 1 : builds.Average(b => b.DeviationPascals / Math.Max(evidence.Signal.NoisePascals, 0.8e5)),
        };
    }

    /// <summary>Where the pressure falls by little, cooling and the moment at which the ram slips back weigh as much as the leak.</summary>
    private static double HoldOff(StrokeEvidence evidence) =>
        LeakOff + (evidence.Pauses.Count == 0 ? 0.2 : 0.28 * Math.Exp(-(evidence.Pauses[0].Pascals[0] - evidence.Pauses[0].Pascals[^1]) / 20e5));

    private static double Hypot(double a, double b, double c) => Math.Max(1e-9, Math.Sqrt(a * a + b * b + c * c));

    /// <summary>A hypothesis with its weight and covariance.</summary>
    private sealed record Weighed(FittedLeaks Fit, double Weight, double[]? Covariance)
    {
        /// <summary>In the unit of the unknown.</summary>
        public double Mean(int place) => Fit.Best.Unknowns[place];

        /// <summary>In the unit of the unknown.</summary>
        public double Deviation(int place) => Fit.Problem.AllPriors[place].Fixed ? 0 : Math.Sqrt(Between(place, place));

        private double Between(int a, int b) => Covariance![a * Fit.Best.Unknowns.Length + b];

        /// <summary>ln of the standing leak as it flows at the mean pressure of the pause, by pascal.</summary>
        public double LogStanding(StrokeParameters tool, StrokeEvidence evidence)
        {
            var state = Fit.Problem.StateOf(Fit.Best.Unknowns);
            var mean = evidence.Pauses.Count > 0 ? evidence.Pauses[0].Pascals.Average() : ToolState.LeakAtPascals;
            return Math.Log((state.Standing(tool.Inlet) * state.Driving(mean) + state.WeepFlow(mean)) / mean);
        }

        public double LogStandingDeviation(StrokeParameters tool, StrokeEvidence evidence) =>
            Along(x => (this with { Fit = Fit with { Best = Fit.Best with { Unknowns = x } } }).LogStanding(tool, evidence), [Unknown.LogDelivery, Unknown.LogChamber, Unknown.LogBypass, Unknown.Power, Unknown.LogWeep, Unknown.WeepShare]);

        /// <summary>A share of the sound drive's.</summary>
        public double Strength(StrokeParameters tool) => (Mean(Unknown.Volts) - StrengthAmperes * Math.Exp(Mean(Unknown.LogOhms))) / (tool.SupplyVolts - StrengthAmperes * tool.ResistanceOhms);

        /// <summary>A share likewise.</summary>
        public double StrengthDeviation(StrokeParameters tool) =>
            Along(x => (this with { Fit = Fit with { Best = Fit.Best with { Unknowns = x } } }).Strength(tool), [Unknown.Volts, Unknown.LogOhms]);

        /// <summary>Standard deviation of a function of some unknowns, to first order.</summary>
        private double Along(Func<double[], double> of, int[] places)
        {
            var middle = of(Fit.Best.Unknowns);
            var slopes = new double[places.Length];
            for (var i = 0; i < places.Length; i++)
            {
                if (Fit.Problem.AllPriors[places[i]].Fixed)
                    continue;
                var x = (double[])Fit.Best.Unknowns.Clone();
                x[places[i]] += 1e-4;
                slopes[i] = (of(x) - middle) / 1e-4;
            }

            var variance = 0.0;
            for (var i = 0; i < places.Length; i++)
            {
                for (var j = 0; j < places.Length; j++)
                    variance += slopes[i] * slopes[j] * Between(places[i], places[j]);
            }

            return Math.Sqrt(Math.Max(0, variance));
        }
    }
}
