using System.Globalization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>Turns as a hand makes them: by the clock, in twelfths of a turn.</summary>
public static class Twelfths
{
    public static Angle Of(double twelfths) => Angle.FromTurns(twelfths / 12);

    /// <summary>The nearest whole number of twelfths; its sign is that of the angle.</summary>
    public static int Nearest(Angle angle) => (int)Math.Round(angle.Turns * 12, MidpointRounding.AwayFromZero);

    /// <summary>Size in words, to half a twelfth, and in degrees: <c>5/12 (150°)</c>, <c>1 turn and 3/12 (450°)</c>, <c>about 5½/12 (170°)</c>.</summary>
    public static string Text(Angle angle)
    {
        var degrees = Math.Abs(angle.Degrees);
        var halves = (int)Math.Round(degrees / 15, MidpointRounding.AwayFromZero);
        if (halves == 0)
            return degrees < 0.5 ? "no turn" : Say($"less than ½/12 ({degrees:0}°)");
        var about = Math.Abs(degrees - 15 * halves) > 0.5 ? "about " : "";
        return Say($"{about}{Words(halves)} ({degrees:0}°)");
    }

    private static string Words(int halves)
    {
        var (whole, rest) = Math.DivRem(halves, 24);
        var part = rest == 1 ? "½/12" : Say($"{rest / 2}{(rest % 2 == 0 ? "" : "½")}/12");
        var turns = whole == 1 ? "1 turn" : Say($"{whole} turns");
        return whole == 0 ? part : rest == 0 ? turns : turns + " and " + part;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
