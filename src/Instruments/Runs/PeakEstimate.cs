using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Runs;

/// <summary>The peak of a run, and how it was found.</summary>
/// <param name="Value">The true peak as well as the readings tell it.</param>
/// <param name="Highest">The highest reading, uncorrected.</param>
/// <param name="Standard">Standard uncertainty from noise and fit alone; null where the highest reading stands for the peak.</param>
/// <param name="RiseBarPerSecond">Rise of the pressure towards the peak, bar per second.</param>
public sealed record PeakEstimate(Pressure Value, Pressure Highest, PeakMethod Method, Pressure? Standard, double RiseBarPerSecond);

/// <summary>How a peak was found.</summary>
public enum PeakMethod
{
    /// <summary>The highest reading, as it is: no fit held.</summary>
    HighestReading,

    /// <summary>A rise and the fall behind it, seen through the sensor's lag; the peak is where they meet.</summary>
    Corner,

    /// <summary>The rise alone, taken to the highest reading: the fall was over between two samples.</summary>
    Rise,

    /// <summary>A slow top, smoothed: the highest of many noisy readings would be too high.</summary>
    FlatTop,
}
