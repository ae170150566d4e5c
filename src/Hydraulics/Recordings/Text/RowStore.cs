namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Rows of time and two signals in bounded memory. When it is full, and rows come fast enough, it goes on with the mean of each pair.</summary>
internal sealed class RowStore(int most)
{
    /// <summary>Rows per second that averaging leaves at least.</summary>
    public const double SlowestRate = 1_000;

    private readonly int _most = most - (most % 2);
    private double[] _seconds = new double[4_096], _first = new double[4_096], _second = new double[4_096];
    private double _sumSeconds, _sumFirst, _sumSecond;
    private int _held, _heldFirst, _heldSecond;

    public int Count { get; private set; }

    /// <summary>Number of rows of the file in each row kept.</summary>
    public int Averaged { get; private set; } = 1;

    public ReadOnlySpan<double> Seconds => _seconds.AsSpan(0, Count);

    public ReadOnlySpan<double> First => _first.AsSpan(0, Count);

    public ReadOnlySpan<double> Second => _second.AsSpan(0, Count);

    /// <summary>Adds a row; false when it is full and rows come too slowly to be averaged.</summary>
    public bool Add(double seconds, double first, double second)
    {
        if (Averaged == 1)
            return Keep(seconds, first, second);
        _sumSeconds += seconds;
        (_sumFirst, _heldFirst) = double.IsNaN(first) ? (_sumFirst, _heldFirst) : (_sumFirst + first, _heldFirst + 1);
        (_sumSecond, _heldSecond) = double.IsNaN(second) ? (_sumSecond, _heldSecond) : (_sumSecond + second, _heldSecond + 1);
        if (++_held < Averaged)
            return true;
        var kept = Keep(_sumSeconds / _held, _sumFirst / _heldFirst, _sumSecond / _heldSecond); // 0/0: nothing but missing cells
        (_sumSeconds, _sumFirst, _sumSecond, _held, _heldFirst, _heldSecond) = (0, 0, 0, 0, 0, 0);
        return kept;
    }

    private bool Keep(double seconds, double first, double second)
    {
        if (Count == _most && !Halve())
            return false;
        if (Count == _seconds.Length)
        {
            var length = Math.Min(2 * Count, _most);
            Array.Resize(ref _seconds, length);
            Array.Resize(ref _first, length);
            Array.Resize(ref _second, length);
        }

        (_seconds[Count], _first[Count], _second[Count]) = (seconds, first, second);
        Count++;
        return true;
    }

    private bool Halve()
    {
        var rate = (Count - 1) / (_seconds[Count - 1] - _seconds[0]);
        if (!(rate >= 2 * SlowestRate * (1 - 1e-6)))
            return false;
        for (var i = 0; i < Count / 2; i++)
        {
            _seconds[i] = 0.5 * (_seconds[2 * i] + _seconds[(2 * i) + 1]);
            _first[i] = Mean(_first[2 * i], _first[(2 * i) + 1]);
            _second[i] = Mean(_second[2 * i], _second[(2 * i) + 1]);
        }

        Count /= 2;
        Averaged *= 2;
        return true;
    }

    private static double Mean(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : 0.5 * (a + b);
}
