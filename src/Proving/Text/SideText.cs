namespace Ramwright.Proving.Text;

/// <summary>Limits in words.</summary>
internal static class SideText
{
    public static string Limit(LimitSide side) => side == LimitSide.Lower ? "lower limit" : "upper limit";

    public static string RightSide(LimitSide side) => side == LimitSide.Lower ? "above" : "below";
}
