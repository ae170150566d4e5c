namespace Ramwright.Setting.Belief;

/// <summary>The scatter before any run: log-normal about the expected one, as nodes and weights.</summary>
/// <remarks>
/// The trapezoidal rule in ln(scatter), ends cut off at 2.5 standard deviations: a posterior is smooth there. The spread of 0.6 covers a factor of
/// 3.3 each way with 95 %.
/// </remarks>
internal static class ScatterNodes
{
    private const double Spread = 0.6; // in ln(scatter)
    private const int Count = 11;
    private const double Reach = 2.5;

    public static (double Bar, double Share)[] Of(double expectedBar)
    {
        var nodes = new (double Bar, double Share)[Count];
        var sum = 0.0;
        for (var i = 0; i < Count; i++)
        {
            var z = Reach * (2.0 * i / (Count - 1) - 1);
            nodes[i] = (expectedBar * Math.Exp(Spread * z), Math.Exp(-0.5 * z * z));
            sum += nodes[i].Share;
        }

        for (var i = 0; i < Count; i++)
            nodes[i].Share /= sum;
        return nodes;
    }
}
