namespace Ramwright.Metrology.Moderation;

/// <summary>What an earlier series says about scatter.</summary>
public readonly record struct SeriesScatter
{
    /// <param name="deviation">Sample standard deviation (n − 1), above zero; any unit, the same for all.</param>
    /// <param name="degreesOfFreedom">Readings less one, 1 to 100,000.</param>
    public SeriesScatter(double deviation, int degreesOfFreedom)
    {
        if (deviation is not (> 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(deviation), deviation, "A standard deviation above zero is wanted; equal readings hide theirs.");
        if (degreesOfFreedom is < 1 or > 100_000)
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Degrees of freedom are 1 to 100,000.");
        Deviation = deviation;
        DegreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>Sample standard deviation; the unit of the readings, SI.</summary>
    public double Deviation { get; }

    public int DegreesOfFreedom { get; }
}
