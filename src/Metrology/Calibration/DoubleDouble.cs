namespace Ramwright.Metrology.Calibration;

/// <summary>A number as the unrounded sum of two doubles: about 31 digits, for sums in which much cancels.</summary>
/// <remarks>T. J. Dekker, Numerische Mathematik 18 (1971) 224; products by fused multiply-add.</remarks>
internal readonly record struct DoubleDouble(double High, double Low)
{
    public static implicit operator DoubleDouble(double value) => new(value, 0);

    public static explicit operator double(DoubleDouble value) => value.High + value.Low;

    public static DoubleDouble operator +(DoubleDouble a, DoubleDouble b)
    {
        var sum = a.High + b.High;
        var part = sum - a.High;
        var lost = a.High - (sum - part) + (b.High - part);
        var lows = a.Low + b.Low;
        var lowPart = lows - a.Low;
        var lowLost = a.Low - (lows - lowPart) + (b.Low - lowPart);
        var (high, low) = Joined(sum, lost + lows);
        return Joined(high, low + lowLost);
    }

    public static DoubleDouble operator -(DoubleDouble a) => new(-a.High, -a.Low);

    public static DoubleDouble operator -(DoubleDouble a, DoubleDouble b) => a + -b;

    public static DoubleDouble operator *(DoubleDouble a, DoubleDouble b)
    {
        var product = a.High * b.High;
        return Joined(product, Math.FusedMultiplyAdd(a.High, b.High, -product) + (a.High * b.Low + a.Low * b.High));
    }

    public static DoubleDouble operator /(DoubleDouble a, DoubleDouble b)
    {
        var first = a.High / b.High;
        var rest = a - b * first;
        var second = rest.High / b.High;
        rest -= b * second;
        return (DoubleDouble)first + second + rest.High / b.High;
    }

    public static DoubleDouble Sqrt(DoubleDouble a)
    {
        if (!(a.High > 0))
            return 0;
        var root = Math.Sqrt(a.High);
        var rest = a - (DoubleDouble)root * root;
        return (DoubleDouble)root + rest.High / (2 * root);
    }

    private static DoubleDouble Joined(double high, double low)
    {
        var sum = high + low;
        return new(sum, low - (sum - high));
    }
}
