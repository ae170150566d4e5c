namespace Ramwright.Metrology.Calibration;

/// <summary>What changed in a device from one calibration to the next.</summary>
public abstract record Drift
{
    private Drift() { }

    /// <summary>The largest change of the correction over the readings that both calibrations hold.</summary>
    /// <param name="At">Reading at which it is largest.</param>
    /// <param name="Change">Correction after less before, in the reading's unit.</param>
    /// <param name="Years">The time between.</param>
    /// <param name="Standard">Standard uncertainty of the change: both lines there; NaN when one is not known.</param>
    public sealed record Measured(double At, double Change, double Years, double Standard) : Drift
    {
        /// <summary>Change per year, in the reading's unit.</summary>
        public double PerYear => Change / Years;

        /// <summary>|change| over its expanded uncertainty (k = 2): above 1 the device has changed; below, no change can be seen. A ratio (E_n in ISO 13528).</summary>
        public double Ratio => Math.Abs(Change) / (2 * Standard);

        /// <summary>Half-width to take for drift in a budget: as much change as was seen, or as could hide in the uncertainty, in each year; a value in the reading's unit.</summary>
        /// <param name="years">Until the next calibration, zero or more.</param>
        public double HalfWidthFor(double years) => years / Years * Math.Max(Math.Abs(Change), double.IsNaN(Standard) ? 0 : 2 * Standard);
    }

    /// <summary>The two calibrations have no reading in common.</summary>
    public sealed record NoCommonRange : Drift;

    /// <param name="before">As it was left.</param>
    /// <param name="after">As it was found.</param>
    /// <param name="years">Between them, above zero.</param>
    public static Drift Between(CalibrationLine before, CalibrationLine after, double years)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (!(years > 0 && double.IsFinite(years)))
            throw new ArgumentOutOfRangeException(nameof(years), years, "A time above zero is wanted.");
        var (low, high) = (Math.Max(before.Low, after.Low), Math.Min(before.High, after.High));
        if (low > high)
            return new NoCommonRange();
        var at = after.FarthestFrom(before, low, high);
        var change = after.CorrectionAt(at) - before.CorrectionAt(at);
        var (u1, u2) = (before.Correct(at).OfLine, after.Correct(at).OfLine);
        return new Measured(at, change, years, Math.Sqrt(u1 * u1 + u2 * u2));
    }
}
