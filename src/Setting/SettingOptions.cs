using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>What the advisor assumes and what risk it takes.</summary>
public sealed record SettingOptions
{
    private const double UsualScatter = 0.0055; // of the nominal pressure: the middle, on a log scale, of 0.2 to 1.5 % (common practice)

    /// <summary>Largest chance (0 to 1) of the mean past the maximum that an advised turn may carry.</summary>
    public double LargestChancePastMaximum { get; init; } = 0.001;

    /// <summary>Chance (0 to 1) of the mean in the window at which the advice may be to stop.</summary>
    public double ChanceToStop { get; init; } = 0.95;

    /// <summary>Standard uncertainty of one reading, the same for all runs (systematic); no number of runs lessens it.</summary>
    public Pressure ReadingUncertainty { get; init; } = Pressure.FromBar(2);

    /// <summary>How far a true peak may lie above its reading: rise rate × (time constant + sampling interval) of the device. It moves the upper limits alone.</summary>
    public Pressure PeakAboveReading { get; init; }

    /// <summary>How far a peak lies above the pressure at which the relief starts to open: rise rate × delay of the relief. Only a computed first setting needs it.</summary>
    public Pressure PeakAboveOpening { get; init; }

    /// <summary>Run-to-run standard deviation expected before any run, within a factor of about two; null: 0.55 % of the nominal pressure.</summary>
    public Pressure? ExpectedScatter { get; init; }

    /// <summary>The most that a turn back may lose to play of the screw and stickiness of what it moves.</summary>
    public Angle Backlash { get; init; } = Angle.FromDegrees(30);

    /// <summary>The finest turn that a hand makes on purpose (<em>common practice</em>).</summary>
    public Angle FinestTurn { get; init; } = Angle.FromDegrees(5);

    internal double ScatterBar(double nominalBar) => ExpectedScatter?.Bar ?? UsualScatter * nominalBar;

    /// <exception cref="ArgumentOutOfRangeException">A chance not inside 0 to 1, a scatter or a finest turn not above zero, another value below zero.</exception>
    internal static void Check(SettingOptions options)
    {
        if (options.LargestChancePastMaximum is not (> 0 and < 1) || options.ChanceToStop is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(options), options, "Chances lie above 0 and below 1.");
        if (options.ExpectedScatter is { Si: <= 0 } || !(options.FinestTurn.Si > 0) || !(options.Backlash.Si >= 0))
            throw new ArgumentOutOfRangeException(nameof(options), options, "Scatter and finest turn are above zero, backlash is zero or more.");
        if (!(options.ReadingUncertainty.Si >= 0) || !(options.PeakAboveReading.Si >= 0) || !(options.PeakAboveOpening.Si >= 0))
            throw new ArgumentOutOfRangeException(nameof(options), options, "Uncertainties and what a peak lies above are zero or more.");
    }
}
