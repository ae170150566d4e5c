using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Puts runs, bends and falls together to the phases of one stroke.</summary>
internal sealed class StrokeAssembly
{
    private readonly Recording _recording;
    private readonly SignalGrid? _pressure, _current;
    private readonly List<PhaseNote> _notes;
    private readonly List<PhaseEvent> _events = [];
    private readonly Standstill? _standstill;
    private readonly double _zero, _end;
    private readonly ReliefFall? _fall;
    private readonly double? _opened;
    private ImmutableArray<MotorRun> _runs;
    private PhaseList _phases = null!;

    public StrokeAssembly(Recording recording, SignalGrid? pressure, SignalGrid? current, ImmutableArray<MotorRun> runs, List<PhaseNote> notes)
    {
        (_recording, _pressure, _current, _runs, _notes) = (recording, pressure, current, runs, notes);
        _end = recording.Seconds[^1];
        _standstill = Standstill.Before(recording, runs[0].FromSeconds);
        if (pressure is not null)
        {
            _zero = _standstill?.Pressure?.Zero ?? StrokeParting.Lowest(pressure);
            foreach (var run in runs)
            {
                _fall = ReliefFall.Find(pressure, pressure.IndexOf(run.FromSeconds + 0.02), pressure.IndexOf(run.ToSeconds) + 1, _zero);
                if (_fall is not null)
                    break;
            }
        }

        _opened = _fall?.TopSeconds ?? (pressure is null ? CurrentMarks.Unloads(current!, runs[^1], CurrentZero()) : null);
        LeaveOutLater();
    }

    private bool MotorIsSeen => _current is not null;

    private MotorRun Last => _runs[^1];

    public Segmentation Finish()
    {
        var step = SignalGrid.MedianStep(_recording.Seconds);
        var beginningMissing = _runs[0].FromSeconds <= _recording.Seconds[0] + (3 * step);
        var endMissing = _opened is null ? Last.ToSeconds >= _end - (3 * step) : _fall is { } fall && fall.FootSeconds >= _end - 0.01;
        _phases = new(_recording.Seconds[0], _end);
        Begin(beginningMissing);
        var kinks = _pressure is not null ? PressureKinks.Find(_pressure, UpToRelief()) : FromCurrent();
        if (RunsDry(kinks))
            kinks = kinks with { Closed = null, HasConnector = true };
        Kinks(kinks);
        Runs(kinks);
        End();
        Warn(step);
        var segments = new StrokeSegments(_phases.Finish(), [.. _events.OrderBy(e => e.Seconds)], _standstill, [.. _notes]);
        return (beginningMissing, endMissing) switch
        {
            (false, false) => new Segmentation.WholeStroke(segments),
            (true, true) => new Segmentation.HalfStroke(MissingPart.BeginningAndEnd, segments),
            (true, false) => new Segmentation.HalfStroke(MissingPart.Beginning, segments),
            _ => new Segmentation.HalfStroke(MissingPart.End, segments),
        };
    }

    /// <summary>Runs after the one in which the relief opened belong to another stroke.</summary>
    private void LeaveOutLater()
    {
        if (_opened is not { } opened || _runs.FirstOrDefault(r => r.FromSeconds > opened) is not { ToSeconds: > 0 } later)
            return;
        _notes.Add(new(PhaseNoteKind.AnotherStroke, StrokeParting.Text($"another stroke begins at {later.FromSeconds:0.00} s; it was left out")));
        _runs = [.. _runs.Where(r => r.FromSeconds <= opened)];
    }

    private ImmutableArray<MotorRun> UpToRelief() => _opened is not { } opened ? _runs : [.. _runs.Select(r => r.ToSeconds > opened ? r with { ToSeconds = opened } : r)];

    private void Begin(bool beginningMissing)
    {
        if (_standstill is null)
            _notes.Add(new(PhaseNoteKind.NoStandstill, "there is no standstill before the trigger; zeros of the sensors were taken from the lowest values"));
        if (beginningMissing)
            return;
        _phases.Add(PhaseKind.Standstill, _runs[0].FromSeconds);
        _events.Add(new(PhaseEventKind.TriggerPulled, _runs[0].FromSeconds, _runs[0].WithinSeconds));
    }

    private void Kinks(PressureKinks kinks)
    {
        if (kinks is { HasConnector: true, Touched: { } touched })
            _events.Add(new(PhaseEventKind.LoadTouched, touched, kinks.WithinSeconds));
        if (kinks.Closed is { } closed)
            _events.Add(new(PhaseEventKind.DiesClosed, closed, kinks.WithinSeconds));
    }

    private void Runs(PressureKinks kinks)
    {
        for (var i = 0; i < _runs.Length; i++)
        {
            if (i > 0)
            {
                _phases.Add(PhaseKind.Hold, _runs[i].FromSeconds);
                _events.Add(new(PhaseEventKind.TriggerPulledAgain, _runs[i].FromSeconds, _runs[i].WithinSeconds));
            }

            var to = _opened is { } opened && i == _runs.Length - 1 ? Math.Min(opened, _runs[i].ToSeconds) : _runs[i].ToSeconds;
            _phases.Add(PhaseKind.Advance, Math.Min(to, kinks.Touched ?? to));
            _phases.Add(PhaseKind.Squeeze, Math.Min(to, kinks.Closed ?? to), only: kinks.HasConnector);
            _phases.Add(PhaseKind.Build, to, only: kinks.Touched is not null);
            if (i < _runs.Length - 1)
                _events.Add(new(PhaseEventKind.TriggerReleased, _runs[i].ToSeconds, _runs[i].WithinSeconds));
        }
    }

    private void End()
    {
        if (MotorIsSeen && Last.ToSeconds < _end)
            _events.Add(new(PhaseEventKind.MotorOff, Last.ToSeconds, Last.WithinSeconds));
        if (_opened is not { } opened)
        {
            GivenUp();
            return;
        }

        _events.Add(new(PhaseEventKind.ReliefOpened, opened, _fall?.WithinSeconds ?? 0.03));
        if (_fall is null)
        {
            _phases.Add(PhaseKind.Opening, Math.Max(opened, Last.ToSeconds));
            return;
        }

        _phases.Add(PhaseKind.Opening, _fall.FootSeconds);
        var home = ReturnEnd.Of(_pressure!, _fall, _zero, MotorIsSeen ? Last.ToSeconds : null);
        if (home.Closed is { } closed)
            _events.Add(new(PhaseEventKind.ReliefClosed, closed, home.ClosedUnseen ? 0.05 : 0.01));
        if (home.ClosedUnseen)
            _notes.Add(new(PhaseNoteKind.ClosedUnseen, "the relief closed unseen, at the latest when the ram was home"));
        if (home.Home is { } at)
        {
            _events.Add(new(PhaseEventKind.RamHome, at, Math.Max(0.02, 2 * _pressure!.StepSeconds)));
            _phases.Add(PhaseKind.Return, at);
        }
        else if (home.StaysOut)
        {
            _notes.Add(new(PhaseNoteKind.RamStaysOut, "pressure stays after the relief opened: the ram is not home"));
        }
        else
        {
            _notes.Add(new(PhaseNoteKind.EndsInReturn, "the recording ends before the ram is home"));
            _phases.Add(PhaseKind.Return, _end);
        }
    }

    /// <summary>After the last run without an opening: pressure is left alone, or there is none.</summary>
    private void GivenUp()
    {
        if (Last.ToSeconds >= _end)
            return;
        _notes.Add(new(PhaseNoteKind.GivenUp, "the motor stopped before the relief opened"));
        if (_pressure is not null && _phases.LastKind is PhaseKind.Build or PhaseKind.Squeeze)
            _phases.Add(PhaseKind.Hold, _end);
    }

    /// <summary>Whether the load began, and the motor then turns as easily as in the advance: the pump delivers nothing any more, and whether the dies closed is not to be seen.</summary>
    private bool RunsDry(PressureKinks kinks)
    {
        if (_opened is not null || _current is null || kinks is not { HasConnector: false, Touched: { } touched } || _runs[0].FromSeconds + 0.5 > touched)
            return false;
        var advance = _current.Mean(_current.IndexOf(_runs[0].FromSeconds + 0.25), _current.IndexOf(touched - 0.02)) - CurrentZero();
        var last = _current.Mean(_current.IndexOf(Last.ToSeconds - 0.15), _current.IndexOf(Last.ToSeconds - 0.02)) - CurrentZero();
        if (Last.ToSeconds - touched < 0.5 || last > 1.3 * advance)
            return false;
        _notes.Add(new(PhaseNoteKind.RunsDry, "the motor ends as lightly loaded as in the advance: the pump gives no more oil, and whether the dies closed is not to be seen"));
        return true;
    }

    private double CurrentZero() => _standstill?.Current?.Zero ?? StrokeParting.Lowest(_current!);

    private PressureKinks FromCurrent()
    {
        var loads = CurrentMarks.Loads(_current!, UpToRelief(), CurrentZero());
        return new(loads, loads, HasConnector: false, 0.06);
    }

    private void Warn(double step)
    {
        if (!MotorIsSeen && _recording.Amperes is null)
            _notes.Add(new(PhaseNoteKind.MotorNotSeen, "there is no current: when the motor ran was told by pressure, and when it stopped for good is not to be seen"));
        if (_pressure is null)
            _notes.Add(new(PhaseNoteKind.PressureNotSeen, "there is no pressure: dies and relief were told by the load on the motor, and are coarse"));
        if (step > 0.004)
            _notes.Add(new(PhaseNoteKind.SlowRate, StrokeParting.Text($"rows come {1e3 * step:0.#} ms apart; no moment is finer")));
        foreach (var e in _events.Where(e => e.Kind is PhaseEventKind.ReliefOpened or PhaseEventKind.DiesClosed && IsMissing(e.Seconds)).ToList())
            _notes.Add(new(PhaseNoteKind.RowsMissing, StrokeParting.Text($"rows are missing around {e.Seconds:0.000} s; the moment lies between those that are there")));
    }

    /// <summary>Whether pressure is missing within 3 ms of a moment.</summary>
    private bool IsMissing(double seconds)
    {
        if (_recording.Pascals is not { } pascals)
            return false;
        for (var i = 0; i < pascals.Length; i++)
        {
            if (Math.Abs(_recording.Seconds[i] - seconds) < 3e-3 && double.IsNaN(pascals[i]))
                return true;
        }

        return false;
    }
}
