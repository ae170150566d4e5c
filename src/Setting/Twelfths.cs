using System.Globalization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>A turn as a hand makes it: in twelfths, like the hours on a clock face.</summary>
public static class Twelfths
{
    public static Angle Of(double twelfths) => Angle.FromTurns(twelfths / 12);

    /// <summary>The nearest whole number of twelfths; its sign is that of the angle.</summary>
    public static int Nearest(Angle angle) => (int)Math.Round(angle.Turns * 12, MidpointRounding.AwayFromZero);

    /// <summary>Size in words, to half a twelfth: <c>6/12 turn</c>, <c>1 turn and 3/12</c>, <c>less than 1/24 turn</c>.</summary>
    public static string Text(Angle angle)
    {
        var halves = (int)Math.Round(Math.Abs(angle.Turns) * 24, MidpointRounding.AwayFromZero);
        if (halves == 0)
            return angle.Si == 0 ? "no turn" : "less than 1/24 turn";
        var (whole, rest) = Math.DivRem(halves, 24);
        var part = rest % 2 == 0 ? Say($"{rest / 2}/12") : Say($"{rest}/24");
        if (whole == 0)
            return part + " turn";
        var turns = whole == 1 ? "1 turn" : Say($"{whole} turns");
        return rest == 0 ? turns : turns + " and " + part;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
