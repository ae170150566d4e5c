namespace Ramwright.Metrology.Calibration;

/// <summary>What a calibration gives.</summary>
public abstract record CalibrationAnswer
{
    private CalibrationAnswer() { }

    /// <summary>A line with its scatter.</summary>
    public sealed record Fitted(CalibrationLine Line) : CalibrationAnswer;

    /// <summary>As many points as the form has coefficients: it passes through all, and the scatter cannot be told. With stated uncertainties it can be used.</summary>
    public sealed record Through(CalibrationLine Line) : CalibrationAnswer;

    /// <summary>One point: an offset there, and nothing about any other reading.</summary>
    /// <param name="Reading">Where.</param>
    /// <param name="Correction">Reference less reading, in their unit.</param>
    /// <param name="Standard">As stated; null when it was not.</param>
    public sealed record OnePoint(double Reading, double Correction, double? Standard) : CalibrationAnswer;

    /// <summary>Too few points, or too few different readings, for the form asked.</summary>
    /// <param name="Different">Different readings there are.</param>
    /// <param name="Wanted">Different readings the form needs.</param>
    public sealed record TooFew(int Different, int Wanted) : CalibrationAnswer;
}
