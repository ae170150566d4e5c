namespace Ramwright.Hydraulics.Integration;

/// <summary>Where in a step a gauge first rises to zero, found on the dense output.</summary>
internal sealed class EventSearch
{
    /// <summary>Gauges are looked at this many times in a step, so that one that rises and falls again within it is seen.</summary>
    private const int Looks = 8;

    /// <summary>An event is pinned to this, in seconds.</summary>
    private const double WithinSeconds = 2e-10;

    private readonly IStiffSystem _system;
    private readonly StiffStep _step;
    private readonly double[] _before, _after, _trial, _state;
    private bool _justStarted;

    public EventSearch(IStiffSystem system, StiffStep step)
    {
        (_system, _step) = (system, step);
        (_before, _after, _trial) = (new double[system.GaugeCount], new double[system.GaugeCount], new double[system.GaugeCount]);
        _state = new double[system.Size];
    }

    public void StartFrom(ReadOnlySpan<double> state)
    {
        _system.Gauges(state, _before);
        _justStarted = true;
    }

    /// <summary>The next step begins where the last look of this one was.</summary>
    public void GoOn()
    {
        _after.CopyTo(_before.AsSpan());
        _justStarted = false;
    }

    /// <summary>The first event of a step of this length in seconds, or null. Its share lies on the far side: the gauge stands at or above zero there.</summary>
    public (double Share, int Gauge)? Find(double seconds)
    {
        if (_before.Length == 0)
            return null;
        for (var look = 1; look <= Looks; look++)
        {
            GaugesAt((double)look / Looks, _after);
            (double Share, int Gauge)? first = null;
            for (var gauge = 0; gauge < _after.Length; gauge++)
            {
                if (!(_after[gauge] >= 0))
                    continue;
                double share;
                if (_before[gauge] < 0)
                    share = Root(gauge, (look - 1.0) / Looks, (double)look / Looks, WithinSeconds / seconds);
                else if (_justStarted && look == 1)
                    share = 1.0 / Looks; // the start was beyond the event by a rounding, and it stays so
                else
                    continue;
                if (first is null || share < first.Value.Share)
                    first = (share, gauge);
            }

            if (first is not null)
                return first;
            if (look < Looks)
                _after.CopyTo(_before.AsSpan());
        }

        return null;
    }

    private double Root(int gauge, double low, double high, double within)
    {
        var (atLow, atHigh) = (_before[gauge], _after[gauge]);
        var kept = 0;
        for (var i = 0; i < 100 && high - low > within && atHigh > 0; i++)
        {
            // Illinois: the false-position point, the weight of an end that stays twice is halved; plain halving now and then bounds the count.
            var middle = i % 4 == 3 ? 0.5 * (low + high) : (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(middle > low && middle < high))
                middle = 0.5 * (low + high);
            GaugesAt(middle, _trial);
            var value = _trial[gauge];
            if (value >= 0)
            {
                (high, atHigh) = (middle, value);
                if (kept == 1)
                    atLow *= 0.5;
                kept = 1;
            }
            else
            {
                (low, atLow) = (middle, value);
                if (kept == -1)
                    atHigh *= 0.5;
                kept = -1;
            }
        }

        return high;
    }

    private void GaugesAt(double share, Span<double> gauges)
    {
        _step.At(share, _state);
        _system.Gauges(_state, gauges);
    }
}
