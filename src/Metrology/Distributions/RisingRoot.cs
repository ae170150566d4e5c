namespace Ramwright.Metrology.Distributions;

/// <summary>Where a rising function crosses zero: Newton's step while it stays inside what is known, halving when it does not.</summary>
internal static class RisingRoot
{
    /// <summary>The root, to the last few digits.</summary>
    /// <param name="f">The function and its slope; it rises from below zero to above.</param>
    /// <param name="start">Any guess.</param>
    /// <param name="low">A point known to lie below the root, or −∞.</param>
    /// <param name="high">A point known to lie above the root, or +∞.</param>
    public static double Find(Func<double, (double Value, double Slope)> f, double start, double low = double.NegativeInfinity, double high = double.PositiveInfinity)
    {
        var x = start;
        var reach = 0.5 + 0.1 * Math.Abs(start);
        for (var step = 0; step < 200; step++)
        {
            var (value, slope) = f(x);
            if (value == 0)
                return x;
            if (value < 0)
                low = x;
            else
                high = x;
            var next = x - value / slope;
            if (!(next > low && next < high) || Math.Abs(next - x) > reach)
            {
                next = double.IsInfinity(high) ? x + reach : double.IsInfinity(low) ? x - reach : 0.5 * (low + high);
                reach *= 2;
            }

            if (Math.Abs(next - x) <= 4e-16 * Math.Abs(x) || next == low || next == high)
                return next;
            x = next;
        }

        return x;
    }
}
