namespace Ramwright.Metrology.Screens;

/// <summary>Mean and standard deviation of a sample, in the unit of its readings.</summary>
/// <param name="Count">Readings.</param>
/// <param name="Mean">NaN without a reading.</param>
/// <param name="StandardDeviation">With n − 1; exactly zero for equal readings, NaN below two.</param>
public readonly record struct Moments(int Count, double Mean, double StandardDeviation)
{
    /// <summary>Two passes from the first reading, so that a large common part costs no digits.</summary>
    public static Moments Of(ReadOnlySpan<double> readings)
    {
        if (readings.IsEmpty)
            return new(0, double.NaN, double.NaN);
        double first = readings[0], sum = 0;
        foreach (var x in readings)
            sum += x - first;
        var shift = sum / readings.Length;
        double squares = 0, rest = 0;
        foreach (var x in readings)
        {
            var d = x - first - shift;
            squares += d * d;
            rest += d;
        }

        var n = readings.Length;
        return new(n, first + shift, n < 2 ? double.NaN : Math.Sqrt(Math.Max(0, (squares - rest * rest / n) / (n - 1))));
    }
}
