namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>How far off a figure may be before the digits of an uncertainty change.</summary>
public static class NumericalTolerance
{
    /// <summary>δ = ½·10^l for u = c·10^l with c of as many digits as asked; 0 for u = 0. In the unit of u, a value in the result's unit.</summary>
    /// <param name="standard">Zero or more.</param>
    /// <param name="digits">1 or 2.</param>
    /// <remarks>JCGM 101:2008, 7.9.2 (clause from memory).</remarks>
    public static double Of(double standard, int digits)
    {
        if (!(standard > 0))
            return 0;
        var last = Math.Floor(Math.Log10(standard)) - (digits - 1);
        var rounded = Math.Round(standard / Math.Pow(10, last));
        return 0.5 * Math.Pow(10, rounded >= Math.Pow(10, digits) ? last + 1 : last);
    }
}
