using Ramwright.Metrology.Tolerance;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>Where the mean is wanted, and how good it is to have it somewhere; in bar.</summary>
/// <remarks>
/// Good is the chance that a proof of the planned runs holds afterwards: at each limit the exact one-sided factor k must lie between mean and limit in
/// standard deviations s of the series. (limit − x̄)/s is taken as normal about (limit − m)/σ with variance 1/n + k²/(2(n − 1)): Hahn and Meeker,
/// Statistical Intervals (1991), 4.6 (section from memory). A scatter too large to prove counts as just provable, so that such a tool is centred too.
/// </remarks>
internal sealed class Target
{
    private const double InnerPart = 0.5; // the nominal pressure is aimed at as far as it lies in the inner half of the window
    private const double Provable = 0.8; // of the largest scatter that any centred series could prove

    private readonly double _factor, _spread;

    public Target(Limits limits, SettingOptions options)
    {
        var runs = Math.Clamp(limits.ProofRuns, 2, 100);
        var missed = options.PeakAboveReading.Bar;
        Low = limits.Pressure.Min.Bar;
        High = Math.Max(Low, limits.Pressure.Max.Bar - missed);
        Maximum = limits.Maximum.Bar - missed;
        HalfWidth = 0.5 * (High - Low);
        Aim = Math.Clamp(limits.Nominal.Bar, Middle - InnerPart * HalfWidth, Middle + InnerPart * HalfWidth);
        _factor = ToleranceFactor.OneSided(runs, 0.95, 0.95);
        _spread = 1.0 / runs + _factor * _factor / (2 * (runs - 1));
    }

    /// <summary>The lower limit, bar.</summary>
    public double Low { get; }

    /// <summary>The upper limit, bar, less what the device does not catch of a peak.</summary>
    public double High { get; }

    /// <summary>Likewise, bar.</summary>
    public double Maximum { get; }

    /// <summary>Half of the window, bar.</summary>
    public double HalfWidth { get; }

    /// <summary>Where the mean is wanted, bar.</summary>
    public double Aim { get; }

    /// <summary>Run-to-run standard deviation, bar, above which not even a centred series can be expected to hold.</summary>
    public double LargestScatter => HalfWidth / _factor;

    private double Middle => 0.5 * (Low + High);

    public double ChanceInside(SettingBelief belief, double turn) => belief.ChanceBetween(Low, High, turn);

    /// <summary>Chance (0 to 1) that a proof holds after a turn.</summary>
    public double ChanceToProve(SettingBelief belief, double turn) => HalfWidth > 0 ? belief.Expect(turn, ChanceToProve) : 0;

    private double ChanceToProve(double mean, double variance, double scatter)
    {
        var s = Math.Min(scatter, Provable * LargestScatter);
        var spread = Math.Sqrt(_spread + variance / (s * s));
        return Math.Max(0, Strand.Share(((High - mean) / s - _factor) / spread) + Strand.Share(((mean - Low) / s - _factor) / spread) - 1);
    }
}
