using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Charts;

/// <summary>What a stroke chart shows: pressure and current against time, and the moments that part its phases.</summary>
public sealed record StrokeChartInput
{
    public required string Tool { get; init; }

    /// <summary>Rows in the order of time: seconds, pressure, amperes. At least two.</summary>
    public required ImmutableArray<(double Seconds, Pressure Pressure, double Amperes)> Rows { get; init; }

    /// <summary>Moments in the order of time, each with a word or two.</summary>
    public required ImmutableArray<(double Seconds, string Words)> Moments { get; init; }

    /// <summary>Limits of the tool, drawn as lines; null for none.</summary>
    public PressureWindow? Window { get; init; }
    public UnitSystem Units { get; init; }
    public double Width { get; init; } = 760;
    public double Height { get; init; } = 460;
    public double LabelSize { get; init; } = 12;
}
