namespace Ramwright.Metrology.Calibration;

/// <summary>One comparison of a device with a reference; both in the same unit.</summary>
/// <param name="Reading">What the device showed, finite.</param>
/// <param name="Reference">What the reference showed, finite.</param>
/// <param name="Standard">Standard uncertainty of this comparison alone (what is common to all points is given apart), above zero; null when unknown.</param>
public readonly record struct CalibrationPoint(double Reading, double Reference, double? Standard = null)
{
    /// <summary>Whether all of it is finite and a stated uncertainty above zero.</summary>
    public bool IsNumber => double.IsFinite(Reading) && double.IsFinite(Reference) && Standard is null or > 0 and < double.PositiveInfinity;
}

/// <summary>How the correction may run over the range.</summary>
public enum CurveForm
{
    /// <summary>One correction everywhere.</summary>
    Constant,

    /// <summary>A straight line.</summary>
    Straight,

    /// <summary>A parabola.</summary>
    Quadratic,
}
