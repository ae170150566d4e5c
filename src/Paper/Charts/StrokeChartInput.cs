using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Charts;

/// <summary>What a stroke chart shows: pressure and current against time, its phases, and the moments that part them.</summary>
public sealed record StrokeChartInput
{
    public required string Tool { get; init; }

    /// <summary>Rows in the order of time: seconds, pressure, amperes; null where it was not recorded. At least two.</summary>
    public required ImmutableArray<(double Seconds, Pressure? Pressure, double? Amperes)> Rows { get; init; }

    /// <summary>Moments in the order of time, each with a word or two.</summary>
    public required ImmutableArray<(double Seconds, string Words)> Moments { get; init; }

    /// <summary>Phases one behind the other, each with a word or two. With them time is stretched where much happens; without it is even.</summary>
    public ImmutableArray<(double FromSeconds, double ToSeconds, string Words)> Phases { get; init; } = [];

    /// <summary>A fitted curve of pressure in the order of time, laid over what was recorded; empty for none.</summary>
    public ImmutableArray<(double Seconds, Pressure Pressure)> Fitted { get; init; } = [];

    /// <summary>Limits of the tool, drawn as lines; null for none.</summary>
    public PressureWindow? Window { get; init; }
    public UnitSystem Units { get; init; }
    public double Width { get; init; } = 760;
    public double Height { get; init; } = 460;
    public double LabelSize { get; init; } = 12;
}
