using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>Advises the next turn of the relief screw.</summary>
public static class SettingAdvisor
{
    /// <summary>The advice for a tool of this model after the runs so far, in the order taken.</summary>
    public static SettingAdvice Advise(ServiceModel model, IReadOnlyList<SettingRun> runs, SettingOptions? options = null) =>
        Advise(model.Limits, model.Behaviour?.Relief, runs, options);

    /// <summary>The advice from limits alone or with the data of the relief valve; the last run tells where the screw stands.</summary>
    public static SettingAdvice Advise(Limits limits, ReliefData? relief, IReadOnlyList<SettingRun> runs, SettingOptions? options = null) =>
        throw new NotSupportedException("Not written yet.");
}

/// <summary>What the advisor assumes and what risk it takes.</summary>
public sealed record SettingOptions
{
    /// <summary>Largest chance (0 to 1) of the mean past the maximum that an advised turn may carry.</summary>
    public double LargestChancePastMaximum { get; init; } = 0.001;

    /// <summary>Chance (0 to 1) of the mean in the window at which the advice is to stop.</summary>
    public double ChanceToStop { get; init; } = 0.95;

    /// <summary>Standard uncertainty of one reading, the same for all runs (systematic).</summary>
    public Pressure ReadingUncertainty { get; init; } = Pressure.FromBar(2);

    /// <summary>Run-to-run standard deviation expected before any run.</summary>
    public Pressure ExpectedScatter { get; init; } = Pressure.FromBar(4);
}
