using System.Globalization;

namespace Ramwright.Metrology.Text;

/// <summary>Figures rounded as a certificate does: the uncertainty to two digits, the result to the same place (JCGM 100:2008, 7.2.6; clause from memory).</summary>
public static class RoundedText
{
    /// <summary>The decimal place of the second digit, such as 2 for 0.043; at most 12.</summary>
    public static int PlaceOf(double uncertainty, int digits = 2)
    {
        if (!(Math.Abs(uncertainty) > 0) || double.IsInfinity(uncertainty))
            return 6;
        var leading = (int)Math.Floor(Math.Log10(Math.Abs(uncertainty)));
        if (Math.Round(Math.Abs(uncertainty) / Math.Pow(10, leading - digits + 1), MidpointRounding.AwayFromZero) >= Math.Pow(10, digits))
            leading++; // 0.0996 is 0.10
        return Math.Clamp(digits - 1 - leading, -15, 12);
    }

    /// <summary>A value rounded to a decimal place; a place below zero rounds tens and hundreds.</summary>
    public static string At(double value, int place)
    {
        if (!double.IsFinite(value))
            return "not known";
        var scale = Math.Pow(10, Math.Max(0, -place));
        var rounded = Math.Abs(value) < 1e15 && Math.Abs(value) > 0 ? Math.Round(value / scale, Math.Max(0, place), MidpointRounding.AwayFromZero) * scale : value;
        return rounded == 0 ? (0.0).ToString("F" + Math.Max(0, place), CultureInfo.InvariantCulture) : rounded.ToString("N" + Math.Max(0, place), CultureInfo.InvariantCulture).Replace('-', '\u2212');
    }

    /// <summary>A value rounded to so many digits; very small and very large ones with a power of ten.</summary>
    public static string Digits(double value, int digits)
    {
        if (value == 0)
            return "0";
        if (double.IsFinite(value) && Math.Abs(value) is < 1e-6 or >= 1e9)
            return value.ToString("0." + new string('#', digits - 1) + "e0", CultureInfo.InvariantCulture).Replace('-', '\u2212');
        return At(value, PlaceOf(value, digits));
    }
}
