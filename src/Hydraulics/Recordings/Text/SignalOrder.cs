namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Tells current from pressure in columns without names: the motor draws its starting current before any pressure stands, so current leaves zero first.</summary>
internal static class SignalOrder
{
    private const double Share = 0.2;

    public static bool CurrentIsFirst(ReadOnlySpan<double> first, ReadOnlySpan<double> second) => Crossing(first) < Crossing(second);

    /// <summary>The first row that is a fifth of the way from the first rows' mean to the highest value.</summary>
    private static int Crossing(ReadOnlySpan<double> values)
    {
        var rows = Math.Min(20, values.Length);
        var (sum, held) = (0.0, 0);
        foreach (var value in values[..rows])
            (sum, held) = double.IsNaN(value) ? (sum, held) : (sum + value, held + 1);
        var start = held > 0 ? sum / held : 0;
        var level = start + (Share * (SignalValues.Highest(values) - start));
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] >= level)
                return i;
        }

        return values.Length;
    }
}
