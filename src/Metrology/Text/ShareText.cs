using System.Globalization;

namespace Ramwright.Metrology.Text;

/// <summary>Shares and chances as a person reads them.</summary>
public static class ShareText
{
    private const double Most = 0.9999; // no sample shows 100 %

    /// <summary>A share rounded to the nearest: <c>95 %</c>, <c>94.3 %</c>.</summary>
    public static string Percent(double share, int most = 1) => Number(Math.Round(100 * share, most, MidpointRounding.AwayFromZero), most);

    /// <summary>A lower bound, rounded down so that it stays true: 0.9496 is <c>94.9 %</c>.</summary>
    public static string AtLeast(double share) => share >= 0.999
        ? Number(Math.Floor(Math.Min(share, Most) * 1e4 + 1e-9) / 100, 2)
        : Number(Math.Floor(share * 1e3 + 1e-9) / 10, 1);

    /// <summary>An upper bound, rounded up so that it stays true.</summary>
    public static string AtMost(double share) => Number(Math.Ceiling(share * 1e3 - 1e-9) / 10, 1);

    /// <summary>A chance in the way people hold it: <c>about 4 in 5</c>.</summary>
    public static string About(double chance) => chance switch
    {
        < 0.01 => "less than 1 in 100",
        > 0.99 => "more than 99 in 100",
        _ => Fraction(chance),
    };

    private static string Fraction(double chance)
    {
        int[] parts = [2, 3, 4, 5, 10, 20, 100];
        foreach (var whole in parts)
        {
            var part = (int)Math.Round(chance * whole, MidpointRounding.AwayFromZero);
            if (part > 0 && part < whole && Math.Abs(chance - (double)part / whole) < (whole <= 5 ? 0.025 : 1.0))
                return string.Create(CultureInfo.InvariantCulture, $"about {part} in {whole}");
        }

        return string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(chance * 100)} in 100");
    }

    private static string Number(double percent, int most) => percent.ToString("0." + new string('#', most), CultureInfo.InvariantCulture) + " %";
}
