using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>What the advisor assumes and what risk it takes.</summary>
public sealed record SettingOptions
{
    /// <summary>Largest chance (0 to 1) of the mean past the maximum that an advised turn may carry.</summary>
    public double LargestChancePastMaximum { get; init; } = 0.001;

    /// <summary>Chance (0 to 1) of the mean in the window at which the advice is to stop.</summary>
    public double ChanceToStop { get; init; } = 0.95;

    /// <summary>Standard uncertainty of one reading, the same for all runs (systematic).</summary>
    public Pressure ReadingUncertainty { get; init; } = Pressure.FromBar(2);

    /// <summary>Run-to-run standard deviation expected before any run, above zero; weighs as much as four residuals.</summary>
    public Pressure ExpectedScatter { get; init; } = Pressure.FromBar(4);

    /// <summary>Play of the screw and the parts under it, which a turn may take up without an effect.</summary>
    public Angle Backlash { get; init; } = Angle.FromTurns(1.0 / 12);

    /// <summary>The finest turn that a hand makes on purpose (<em>common practice</em>).</summary>
    public Angle FinestTurn { get; init; } = Angle.FromDegrees(5);
}
