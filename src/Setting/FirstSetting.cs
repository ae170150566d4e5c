using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>Where to put the screw after a rebuild, before any run: low by computation, so that the first run can be measured in safety.</summary>
public abstract record FirstSetting
{
    private const double LowShare = 0.8; // of the nominal pressure: low enough to be safe, high enough to read the relief (our choice)
    private const double TouchTurns = 0.25; // standard deviation of where a hand feels the spring begin to press (from memory)
    private const double ReachSpread = 0.05; // of the model's lowest pressure

    private FirstSetting() { }

    /// <summary>Turn in so far from a start that a hand can find, then run.</summary>
    /// <param name="FromStop">From the screw's outer stop, where the model says the lowest pressure is; else from where the spring is just free.</param>
    /// <param name="Direction">The way that raises.</param>
    /// <param name="Turn">How far, zero or more, a whole number of twelfths.</param>
    /// <param name="Expected">The computed peak with its 95 % interval about it, which is wide.</param>
    public sealed record TurnIn(bool FromStop, TurnDirection Direction, Angle Turn, Pressure Mean, PressureWindow Expected, double ChancePastMaximum) : FirstSetting;

    /// <summary>The model has no relief data: screw out until the spring is just free, and come up from there with a run after each turn.</summary>
    public sealed record NoReliefData : FirstSetting;

    /// <remarks>
    /// From a free spring the relief opens at rate × pitch × turns / (contact area − stem area); the peak lies above that by rise rate × delay. The turn is the
    /// longest whose expected peak is at most 80 % of the nominal pressure and whose chance past the maximum is within the limit.
    /// </remarks>
    public static FirstSetting AfterRebuild(Limits limits, ReliefData? relief, SettingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(limits);
        options ??= new();
        SettingOptions.Check(options);
        var prior = ReliefPrior.Of(limits, relief);
        if (!prior.FromModel)
            return new NoReliefData();
        var gain = Math.Abs(prior.BarPerTurn);
        var from = (relief!.Reach?.Min.Bar ?? 0) + options.PeakAboveOpening.Bar;
        var fromSpread = relief.Reach is { } reach ? ReachSpread * reach.Min.Bar : TouchTurns * gain;
        var twelfths = Math.Max(0, Math.Floor(12 * (LowShare * limits.Nominal.Bar - from) / gain));
        while (twelfths > 0 && Past(twelfths) > options.LargestChancePastMaximum)
            twelfths--;
        var mean = from + gain * twelfths / 12;
        var reachBar = 1.96 * Math.Sqrt(fromSpread * fromSpread + prior.Parts.Sum(p => p.Share * p.Spread * p.Spread) * twelfths * twelfths / 144);
        return new TurnIn(
            relief.Reach is not null, prior.RaisingSign > 0 ? TurnDirection.Clockwise : TurnDirection.Anticlockwise, Angle.FromTurns(twelfths / 12),
            Pressure.FromBar(mean), new(Pressure.FromBar(Math.Max(0, mean - reachBar)), Pressure.FromBar(mean + reachBar)), Past(twelfths));

        double Past(double twelfths)
        {
            var turns = twelfths / 12;
            var maximum = limits.Maximum.Bar - options.PeakAboveReading.Bar;
            return prior.Parts.Sum(p => p.Share * Strand.Share((from + gain * turns - maximum) / Math.Sqrt(fromSpread * fromSpread + p.Spread * p.Spread * turns * turns)));
        }
    }
}
