using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Setting;

namespace Ramwright.Paper.Charts;

/// <summary>What a relief chart shows: pressure against the screw.</summary>
public sealed record ReliefChartInput
{
    public required PressureWindow Window { get; init; }
    public Pressure? Nominal { get; init; }
    public required Pressure Maximum { get; init; }

    /// <summary>Runs in the order taken.</summary>
    public required ImmutableArray<SettingRun> Runs { get; init; }

    /// <summary>The advice after the runs; its line, interval and next point are drawn when it has them.</summary>
    public SettingAdvice? Advice { get; init; }
    public UnitSystem Units { get; init; }
    public double Width { get; init; } = 620;
    public double Height { get; init; } = 320;
    public double LabelSize { get; init; } = 12;
}
