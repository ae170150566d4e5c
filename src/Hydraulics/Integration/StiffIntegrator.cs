using System.Diagnostics;

namespace Ramwright.Hydraulics.Integration;

/// <summary>What a call of <see cref="StiffIntegrator.Advance"/> came to.</summary>
public enum Advanced
{
    /// <summary>One step was taken; go on.</summary>
    Stepped,

    /// <summary>A gauge reached zero; time and state stand there. Change the system if it changes, then <see cref="StiffIntegrator.Restart"/>.</summary>
    Event,

    /// <summary>The end was reached.</summary>
    Finished,

    /// <summary>The asked accuracy would take steps shorter than the clock can tell.</summary>
    StepTooShort,

    /// <summary>As many steps were tried as are allowed.</summary>
    TooManySteps,
}

/// <summary>
/// Carries a stiff system through time with steps as long as the asked accuracy allows, finds the events on the dense output to a nanosecond,
/// and restarts behind each. No allocation after construction.
/// </summary>
/// <remarks>Steps and error: <see cref="Rodas5P"/>. Step control: proportional and integral, exponents 0.7/k and 0.4/k,
/// E. Hairer &amp; G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. (Springer 1996), IV.2. Root: the Illinois rule, M. Dowell &amp; P. Jarratt, BIT 11 (1971).</remarks>
public sealed class StiffIntegrator
{
    private const double Safety = 0.9, LeastFactor = 0.2, MostFactor = 6;

    private readonly StiffStep _step;
    private readonly StiffTolerance _tolerance;
    private readonly EventSearch _search;
    private readonly FirstStep _firstStep;
    private readonly double[] _state;
    private double _next, _lastError, _stepLength;
    private bool _standsBehindStep;

    public StiffIntegrator(IStiffSystem system, StiffTolerance tolerance)
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(tolerance);
        if (tolerance.Absolute.Length != system.Size)
            throw new ArgumentException("One absolute tolerance per state is wanted.", nameof(tolerance));
        _tolerance = tolerance;
        _step = new StiffStep(system);
        _search = new EventSearch(system, _step);
        _firstStep = new FirstStep(system);
        _state = new double[system.Size];
    }

    /// <summary>Where the integration stands, in seconds.</summary>
    public double Seconds { get; private set; }

    /// <summary>Where the last step began, in seconds; dense output reaches from here to <see cref="Seconds"/>.</summary>
    public double StepStartSeconds { get; private set; }

    /// <summary>The gauge that reached zero in the last event.</summary>
    public int EventGauge { get; private set; }

    /// <summary>Number of steps taken so far.</summary>
    public int StepsTaken { get; private set; }

    /// <summary>Number of steps tried again shorter so far.</summary>
    public int StepsRefused { get; private set; }

    /// <summary>The state where the integration stands. After an event the caller may change it, then restarts.</summary>
    public Span<double> State => _state;

    /// <summary>Begins at a time (seconds) with a state.</summary>
    public void Start(double seconds, ReadOnlySpan<double> state)
    {
        state.CopyTo(_state);
        (Seconds, StepStartSeconds, StepsTaken, StepsRefused) = (seconds, seconds, 0, 0);
        Restart();
    }

    /// <summary>Begins anew from the present state, as after an event that changed the system.</summary>
    public void Restart()
    {
        _step.StartFrom(_state);
        _search.StartFrom(_state);
        _standsBehindStep = false;
        _next = _firstStep.Seconds(_state, _tolerance);
        _lastError = 1;
    }

    /// <summary>Takes one step, at most up to <paramref name="endSeconds"/>.</summary>
    public Advanced Advance(double endSeconds)
    {
        Debug.Assert(endSeconds >= Seconds, "Time runs forward.");
        if (endSeconds - Seconds <= ShortestStep(endSeconds))
            return Advanced.Finished;
        if (_standsBehindStep)
        {
            _step.StartFrom(_state);
            _search.GoOn();
            _standsBehindStep = false;
        }

        while (true)
        {
            if (StepsTaken + StepsRefused >= _tolerance.MostSteps)
                return Advanced.TooManySteps;
            var reachesEnd = _next >= endSeconds - Seconds;
            var length = reachesEnd ? endSeconds - Seconds : _next;
            if (length < ShortestStep(Seconds))
                return Advanced.StepTooShort;
            var error = _step.Try(length) ? _tolerance.Norm(_step.From, _step.To, _step.Error) : double.PositiveInfinity;
            if (error <= 1)
                return Accept(length, error, reachesEnd ? endSeconds : Seconds + length);
            StepsRefused++;
            _next = length * (double.IsFinite(error) ? Math.Max(LeastFactor, Safety * Math.Pow(error, -1.0 / Rodas5P.ErrorPower)) : LeastFactor);
        }
    }

    /// <summary>The state at a time (seconds) within the last step.</summary>
    public void At(double seconds, Span<double> state)
    {
        Debug.Assert(seconds >= StepStartSeconds - 1e-12 && seconds <= Seconds + 1e-12, "Dense output covers the last step.");
        _step.At(Math.Clamp((seconds - StepStartSeconds) / _stepLength, 0, 1), state);
    }

    private Advanced Accept(double length, double error, double reached)
    {
        var floor = Math.Max(error, 1e-4);
        var factor = Safety * Math.Pow(floor, -0.7 / Rodas5P.ErrorPower) * Math.Pow(_lastError, 0.4 / Rodas5P.ErrorPower);
        _lastError = floor;
        _next = length * Math.Clamp(factor, LeastFactor, MostFactor);
        StepsTaken++;
        _step.PrepareDense();
        (StepStartSeconds, _stepLength) = (Seconds, length);
        if (_search.Find(length) is { } found)
        {
            EventGauge = found.Gauge;
            Seconds = StepStartSeconds + found.Share * length;
            _step.At(found.Share, _state);
            return Advanced.Event;
        }

        Seconds = reached;
        _step.To.CopyTo(_state);
        _standsBehindStep = true;
        return Advanced.Stepped;
    }

    /// <summary>Some units in the last place of the time, in seconds.</summary>
    private static double ShortestStep(double seconds) => 16 * Math.BitIncrement(Math.Abs(seconds)) - 16 * Math.Abs(seconds);
}
