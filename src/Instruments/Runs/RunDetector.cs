using System.Runtime.InteropServices;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Runs;

/// <summary>Finds the runs in a stream of samples: one stroke is one run, told when it is over. Memory is bounded by <see cref="MostSamples"/>.</summary>
/// <remarks>
/// A run begins above one pressure and is over when the samples stay below a lower one, for three samples and 50 ms: noise near a threshold and a
/// reading that drops out part no run in two. What was not seen from beginning to end is never a run.
/// </remarks>
public sealed class RunDetector(RunRule rule, TimeSpan lag, Pressure resolution)
{
    /// <summary>Samples kept of one run; a run with more is too long.</summary>
    public const int MostSamples = 500_000;

    private const int RestSamples = 3;
    private const double RestSeconds = 0.05;

    private enum State { Unknown, Rest, Run, Passing }

    private readonly List<PressureSample> _run = [];
    private State _state = State.Unknown;
    private double _highestBar;
    private double _beganSeconds;
    private int _low;
    private double _lowSinceSeconds;

    /// <summary>Whether a run goes on that may be taken.</summary>
    public bool IsRunning => _state == State.Run;

    /// <summary>When the run that goes on began, on the clock of its samples, seconds.</summary>
    public double BeganSeconds => _beganSeconds;

    /// <summary>Takes the next sample; answers when a run is over with it.</summary>
    /// <exception cref="ArgumentException">A caller's bug: the sample is not finite.</exception>
    public RunOutcome? Add(PressureSample sample)
    {
        if (!double.IsFinite(sample.Bar) || !double.IsFinite(sample.Seconds))
            throw new ArgumentException("A sample is finite.", nameof(sample));
        switch (_state)
        {
            case State.Unknown when sample.Bar < rule.Ends.Bar:
                (_state, _low) = (State.Rest, 0);
                return null;
            case State.Unknown:
                (_state, _highestBar, _low, _beganSeconds) = (State.Passing, sample.Bar, 0, double.NaN); // NaN: its beginning was not seen
                return null;
            case State.Rest when sample.Bar > rule.Begins.Bar:
                _run.Clear();
                _run.Add(sample);
                (_state, _beganSeconds, _low) = (State.Run, sample.Seconds, 0);
                return null;
            case State.Run:
                return Running(sample);
            case State.Passing:
                return Passing(sample);
            default:
                return null;
        }
    }

    /// <summary>The device is lost: a run that goes on is not taken, and what comes next must be seen at rest first.</summary>
    public RunOutcome? Lose()
    {
        var broken = _state == State.Run ? new RunOutcome.NotTaken(WhyNotTaken.Interrupted, Highest()) : null;
        _run.Clear();
        _state = State.Unknown;
        return broken;
    }

    private RunOutcome? Running(PressureSample sample)
    {
        if (IsAtRest(sample))
        {
            _state = State.Rest;
            return Judge();
        }
        if (sample.Bar >= rule.Ends.Bar) // lower ones may have dropped out
            _run.Add(sample);
        if (sample.Seconds - _beganSeconds <= rule.Longest.TotalSeconds && _run.Count < MostSamples)
            return null;
        var tooLong = new RunOutcome.NotTaken(WhyNotTaken.TooLong, Highest());
        _run.Clear();
        (_state, _highestBar, _beganSeconds) = (State.Passing, 0, 0);
        return tooLong;
    }

    /// <summary>A run that is not taken goes by; one whose beginning was not seen is told when it is over.</summary>
    private RunOutcome.NotTaken? Passing(PressureSample sample)
    {
        _highestBar = Math.Max(_highestBar, sample.Bar);
        if (!IsAtRest(sample))
            return null;
        _state = State.Rest;
        return double.IsNaN(_beganSeconds) && _highestBar > rule.Begins.Bar ? new(WhyNotTaken.BeginningNotSeen, Pressure.FromBar(_highestBar)) : null;
    }

    private bool IsAtRest(PressureSample sample)
    {
        if (sample.Bar >= rule.Ends.Bar)
        {
            _low = 0;
            return false;
        }
        if (_low++ == 0)
            _lowSinceSeconds = sample.Seconds;
        if (_low < RestSamples || sample.Seconds - _lowSinceSeconds < RestSeconds)
            return false;
        _low = 0;
        return true;
    }

    private RunOutcome Judge()
    {
        var samples = CollectionsMarshal.AsSpan(_run);
        var outcome = samples.Length < rule.LeastSamples ? new RunOutcome.NotTaken(WhyNotTaken.Jump, Highest())
            : Highest() < rule.Full ? new RunOutcome.NotTaken(WhyNotTaken.ShortOfFull, Highest())
            : RunShape.HasJump(samples) ? new RunOutcome.NotTaken(WhyNotTaken.Jump, Highest())
            : RunShape.HasGap(samples, rule.WidestGapFactor) ? new RunOutcome.NotTaken(WhyNotTaken.Gap, Highest())
            : (RunOutcome)new RunOutcome.Full(PeakEstimator.Estimate(samples, lag, resolution));
        _run.Clear();
        return outcome;
    }

    private Pressure Highest() => Pressure.FromBar(_run.Max(s => s.Bar));
}
