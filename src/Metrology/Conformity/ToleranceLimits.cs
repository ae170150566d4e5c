namespace Ramwright.Metrology.Conformity;

/// <summary>What a true value must keep: a lower limit, an upper one, or both; in the unit of the measurement.</summary>
public readonly record struct ToleranceLimits
{
    private ToleranceLimits(double low, double high) => (Low, High) = low < high && !(double.IsInfinity(low) && double.IsInfinity(high))
        ? (low, high)
        : throw new ArgumentOutOfRangeException(nameof(high), high, "The upper limit lies above the lower one, and one of them is a number.");

    /// <summary>Lower limit, −∞ when there is none; a value in the measurement's unit.</summary>
    public double Low { get; }

    /// <summary>Upper limit, +∞ when there is none; a value in the measurement's unit.</summary>
    public double High { get; }

    /// <summary>Half the distance of the limits, infinite with one alone; a value in the measurement's unit.</summary>
    public double HalfWidth => 0.5 * (High - Low);

    public static ToleranceLimits Between(double low, double high) => new(low, high);

    public static ToleranceLimits AtLeast(double low) => new(low, double.PositiveInfinity);

    public static ToleranceLimits AtMost(double high) => new(double.NegativeInfinity, high);

    /// <summary>Both limits moved inward (outward when negative); null when nothing is left between them.</summary>
    public ToleranceLimits? Inward(double band) => Low + band < High - band ? new(Low + band, High - band) : null;
}
