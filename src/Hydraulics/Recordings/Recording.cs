using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>One recorded stroke in SI units: what a sensor on the tool showed, not yet corrected for its lag or its zero.</summary>
/// <param name="Seconds">When each row was taken, strictly rising; at least two. The first need not be 0, the spacing need not be even.</param>
/// <param name="Pascals">Gauge pressure as read, one per row; <see cref="double.NaN"/> where it is missing or not to be trusted (clipped). Null: no pressure was recorded.</param>
/// <param name="Amperes">Battery current as read, likewise. Null: no current was recorded.</param>
public sealed record Recording(ImmutableArray<double> Seconds, ImmutableArray<double>? Pascals, ImmutableArray<double>? Amperes)
{
    /// <summary>From the first row to the last, in seconds.</summary>
    public double Duration => Seconds[^1] - Seconds[0];

    /// <summary>Rows per second on the whole.</summary>
    public double RowsPerSecond => (Seconds.Length - 1) / Duration;
}
