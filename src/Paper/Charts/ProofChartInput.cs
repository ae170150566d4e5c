using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Charts;

/// <summary>A run on the chart.</summary>
/// <param name="Void">It does not count, for a cause recorded; drawn crossed.</param>
public readonly record struct ChartRun(Pressure Peak, bool Void = false);

/// <summary>What a proof chart shows.</summary>
public sealed record ProofChartInput
{
    public required PressureWindow Limits { get; init; }
    public Pressure? Nominal { get; init; }

    /// <summary>The lower limit moved up, and the upper one moved down, by what the device may be off.</summary>
    public required Pressure GuardLow { get; init; }
    public required Pressure GuardHigh { get; init; }

    /// <summary>Planned number of valid runs: places not filled yet are dotted rings.</summary>
    public required int Planned { get; init; }

    /// <summary>Runs in the order taken, void ones too.</summary>
    public required ImmutableArray<ChartRun> Runs { get; init; }

    public ImmutableArray<Pressure> AsFound { get; init; } = [];
    public UnitSystem Units { get; init; }

    /// <summary>Whether each run carries its value; the report has a table instead when there are many.</summary>
    public bool ShowValues { get; init; } = true;

    /// <summary>Width in picture units; the height follows from the content unless given.</summary>
    public double Width { get; init; } = 620;
    public double Height { get; init; } = 250;

    /// <summary>Height of the labels in picture units.</summary>
    public double LabelSize { get; init; } = 12;
}
