using Ramwright.Metrology.Distributions;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting.Belief;

/// <summary>All that is held of the relief after some runs: a mixture of strands, each exact in itself.</summary>
/// <remarks>
/// Play × scatter × way of answering × part of the prior gain are laid out on a grid; given these, level and gain are a normal distribution that the runs
/// update in closed form (<see cref="ConjugateLine"/>), and the evidence of the runs weighs the strand. What the device is off shifts all runs alike:
/// it is added to each predicted mean and never lessened.
/// </remarks>
internal sealed class SettingBelief
{
    private const double Forgotten = 1e-6, ForgottenAhead = 1e-3; // strands below this share of the likeliest are left out, now and in looking ahead
    private const double LockShare = 0.01; // of the level: how far locking may move a setting (common practice: check once more)

    private readonly Strand[] _strands;
    private readonly double _screw, _systematic;
    private readonly int _raisingSign;

    private SettingBelief(Strand[] strands, double screw, double systematic, int raisingSign, double forgotten = Forgotten)
    {
        (_screw, _systematic, _raisingSign) = (screw, systematic, raisingSign);
        var most = strands.Max(s => s.Weight);
        var kept = strands.Where(s => s.Weight > forgotten * most).ToArray();
        var sum = kept.Sum(s => s.Weight);
        for (var i = 0; i < kept.Length; i++)
            kept[i] = kept[i] with { Weight = kept[i].Weight / sum };
        _strands = kept;
    }

    public ReadOnlySpan<Strand> Strands => _strands;

    public int RaisingSign => _raisingSign;

    /// <summary>The belief after runs in the order taken, at least one.</summary>
    public static SettingBelief After(IReadOnlyList<SettingRun> runs, Limits limits, ReliefPrior prior, SettingOptions options)
    {
        var open = runs.Count;
        while (open > 1 && runs[open - 1].Locked)
            open--;
        var nominal = limits.Nominal.Bar;
        double[] screws = [.. runs.Take(open).Select(r => r.Screw.Turns)], bar = [.. runs.Take(open).Select(r => r.Peak.Bar)];
        var scatters = ScatterNodes.Of(options.ScatterBar(nominal));
        var strands = new List<(Strand Strand, double LogWeight)>();
        foreach (var play in Play.Grid(options.Backlash.Turns))
        {
            var seats = play.Seats(screws);
            foreach (var answering in Answering.All(seats, prior))
                Lay(strands, play, seats, answering, bar, scatters, prior, nominal);
        }

        var most = strands.Max(s => s.LogWeight);
        var belief = new SettingBelief([.. strands.Select(s => s.Strand with { Weight = Math.Exp(s.LogWeight - most) })], screws[^1], options.ReadingUncertainty.Bar, prior.RaisingSign);
        if (open < runs.Count)
            belief = belief.With(s => s.Loosened(LockShare * nominal));
        return runs.Skip(open).Aggregate(belief, (b, run) => b.Read(run.Peak.Bar));
    }

    /// <summary>The belief after one more reading where the screw stands.</summary>
    public SettingBelief Read(double bar)
    {
        var most = _strands.Max(s => s.LogDensity(bar)); // so that a reading far from all of them leaves the least unlikely ones
        return With(s => s.Read(bar) with { Weight = s.Weight * Math.Exp(s.LogDensity(bar) - most) });
    }

    /// <summary>The belief if the screw answers as it should.</summary>
    public SettingBelief IfItAnswers()
    {
        Strand[] answering = [.. _strands.Where(s => s.Answering.Kind is AnswerKind.Follows or AnswerKind.OneOddReading)];
        return answering.Length > 0 ? new(answering, _screw, _systematic, _raisingSign) : this;
    }

    /// <summary>The belief without its unlikelier strands: enough for looking ahead and for a 95 % interval, not for a risk.</summary>
    public SettingBelief Thinned() => new([.. _strands], _screw, _systematic, _raisingSign, ForgottenAhead);

    /// <summary>Mean and standard deviation, bar, of the mean pressure after a turn (clockwise positive, in turns).</summary>
    public (double Mean, double Spread) After(double turn)
    {
        double mean = 0, square = 0;
        var origin = _strands[0].Level;
        foreach (ref readonly var s in _strands.AsSpan())
        {
            var (m, v) = s.After(s.Moved(turn, _screw, _raisingSign));
            mean += s.Weight * (m - origin);
            square += s.Weight * ((m - origin) * (m - origin) + v);
        }

        return (origin + mean, Math.Sqrt(Math.Max(0, square - mean * mean) + _systematic * _systematic));
    }

    /// <summary>Chance that the mean pressure after a turn lies above a pressure, bar.</summary>
    public double ChanceAbove(double bar, double turn) => Expect(turn, (m, v, _) => Strand.Share((m - bar) / Math.Sqrt(v)));

    /// <summary>Chance that the mean pressure after a turn lies between two pressures, bar.</summary>
    public double ChanceBetween(double low, double high, double turn) =>
        Expect(turn, (m, v, _) => Math.Max(0, Strand.Share((high - m) / Math.Sqrt(v)) - Strand.Share((low - m) / Math.Sqrt(v))));

    /// <summary>Expectation of a function of mean, bar, variance, bar², and scatter, bar, of the strands after a turn.</summary>
    public double Expect(double turn, Func<double, double, double, double> value)
    {
        var sum = 0.0;
        foreach (ref readonly var s in _strands.AsSpan())
        {
            var (m, v) = s.After(s.Moved(turn, _screw, _raisingSign));
            sum += s.Weight * value(m, Math.Max(1e-12, v + _systematic * _systematic), s.Scatter);
        }

        return sum;
    }

    /// <summary>The pressure, bar, with a share of the belief below it after a turn; with scatter for a single run, without for the mean.</summary>
    public double Quantile(double share, double turn, bool singleRun = false)
    {
        var (mean, spread) = After(turn);
        double low = mean - 12 * spread - 50, high = mean + 12 * spread + 50, missLow = -share, missHigh = 1 - share;
        var bar = mean + Normal.Quantile(share) * spread;
        for (var step = 0; step < 60; step++) // false position, the end that stays halved (Illinois): Dowell and Jarratt, BIT 11 (1971) 168
        {
            var miss = Expect(turn, (m, v, scatter) => Strand.Share((bar - m) / Math.Sqrt(singleRun ? v + scatter * scatter : v))) - share;
            if (Math.Abs(miss) < 1e-5)
                break;
            if (miss < 0)
                (low, missLow, missHigh) = (bar, miss, 0.5 * missHigh);
            else
                (high, missHigh, missLow) = (bar, miss, 0.5 * missLow);
            bar = low - missLow * (high - low) / (missHigh - missLow);
        }

        return bar;
    }

    /// <summary>Probability of all strands of which something holds.</summary>
    public double ChanceThat(Func<Strand, bool> holds) => _strands.Where(holds).Sum(s => s.Weight);

    /// <summary>Mean of a value over the strands, in the unit of the value: bar, or bar per turn.</summary>
    public double Mean(Func<Strand, double> value) => _strands.Sum(s => s.Weight * value(s));

    private SettingBelief With(Func<Strand, Strand> change) => new([.. _strands.Select(change)], _screw, _systematic, _raisingSign);

    private static void Lay(List<(Strand Strand, double LogWeight)> strands, Play play, double[] seats, Answering answering, double[] bar, (double Bar, double Share)[] scatters, ReliefPrior prior, double nominal)
    {
        var sign = prior.RaisingSign;
        var origin = answering.Effective(seats[0], sign);
        var sums = default(LineSums);
        for (var i = 0; i < bar.Length; i++)
        {
            if (i != answering.Odd)
                sums = sums.With(answering.Effective(seats[i], sign) - origin, bar[i]);
        }

        var here = answering.Effective(seats[^1], sign) - origin;
        var share = Math.Log(answering.Share * play.Share) - (answering.Odd >= 0 ? Math.Log(nominal) : 0); // an odd reading may be anything
        ReadOnlySpan<GainPart> parts = answering.Kind == AnswerKind.Dead ? [new(prior.BarPerTurn, Math.Abs(prior.BarPerTurn), 1)] : prior.Parts.AsSpan();
        foreach (var part in parts)
        {
            var line = new LinePrior(nominal, nominal, answering.Kind == AnswerKind.Backwards ? -part.BarPerTurn : part.BarPerTurn, part.Spread);
            foreach (var scatter in scatters)
            {
                var fit = ConjugateLine.Of(sums, line, scatter.Bar);
                strands.Add((new Strand(
                    0, fit.Level + fit.Gain * here, fit.Gain, fit.LevelVariance + here * (2 * fit.Covariance + here * fit.GainVariance),
                    fit.Covariance + here * fit.GainVariance, fit.GainVariance, scatter.Bar, play, seats[^1], answering),
                    share + Math.Log(part.Share * scatter.Share) + fit.LogEvidence));
            }
        }
    }
}
