using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>One stroke on its way: the timetable of trigger and electronics, and what is noted down.</summary>
internal sealed class StrokeRun
{
    private const double SettleSeconds = 0.25, LongestReturnSeconds = 4;

    private readonly StrokeParameters _tool;
    private readonly StrokePlan _plan;
    private readonly StrokeEquations _equations;
    private readonly StiffIntegrator _integrator;
    private readonly StrokeNotes _notes;
    private readonly int _mostEvents;

    private double _pullAt, _liftAt = double.PositiveInfinity, _switchOffAt = double.PositiveInfinity, _giveUpAt = double.PositiveInfinity, _endAt = double.PositiveInfinity;
    private double _pulledSeconds, _pulledAt;
    private bool _opened, _homeAgain;

    public StrokeRun(StrokeParameters tool, StrokePlan plan, double relative, int mostEvents, int mostSteps)
    {
        (_tool, _plan, _mostEvents) = (tool, plan, mostEvents);
        _equations = new StrokeEquations(tool, plan);
        _integrator = new StiffIntegrator(_equations, StrokeSimulator.Tolerance(relative, mostSteps));
        _notes = new StrokeNotes(_equations, _integrator, plan.SamplesPerSecond);
        _pullAt = plan.LeadSeconds;
    }

    public Stroke ToEnd()
    {
        _integrator.Start(0, new double[StrokeEquations.States]);
        while (true)
        {
            if (_notes.EventCount > _mostEvents)
                return _notes.Finish(StrokeEnd.LimitReached);
            var until = Math.Min(Math.Min(Math.Min(_pullAt, _switchOffAt), Math.Min(_giveUpAt, _endAt)), _liftAt);
            switch (_integrator.Advance(until))
            {
                case Advanced.Stepped:
                    _notes.Step();
                    break;
                case Advanced.Event:
                    _notes.Step();
                    Happened(_integrator.EventGauge);
                    break;
                case Advanced.Finished when until == _endAt:
                    return _notes.Finish(_homeAgain ? StrokeEnd.Home : _opened ? StrokeEnd.RamStaysOut : StrokeEnd.GivenUp);
                case Advanced.Finished:
                    Scheduled();
                    break;
                default:
                    return _notes.Finish(StrokeEnd.LimitReached);
            }
        }
    }

    private void Happened(int gauge)
    {
        var before = _notes.Now();
        var kind = StrokeSwitch.At(gauge, _equations, _integrator.State);
        _notes.Event(kind, before);
        if (kind == StrokeEventKind.ReliefOpened)
            _liftAt = _integrator.Seconds + _tool.ReliefDelaySeconds;
        switch (kind)
        {
            case StrokeEventKind.ReliefOpened when !_opened:
                _opened = true;
                _switchOffAt = _integrator.Seconds + _tool.StopDelaySeconds;
                break;
            case StrokeEventKind.TriggerReleased:
                _pulledSeconds += _integrator.Seconds - _pulledAt;
                _pullAt = _integrator.Seconds + _plan.PauseSeconds;
                _giveUpAt = double.PositiveInfinity;
                break;
            case StrokeEventKind.RamHome when _opened:
                _homeAgain = true;
                _endAt = Math.Min(_endAt, _integrator.Seconds + SettleSeconds);
                break;
            default:
                break;
        }

        _integrator.Restart();
    }

    private void Scheduled()
    {
        var before = _notes.Now();
        var now = _integrator.Seconds;
        if (now >= _liftAt - 1e-9)
        {
            _liftAt = double.PositiveInfinity;
            _equations.Modes.ReliefLifts = _equations.Modes.ReliefOpen;
        }
        else if (now >= _pullAt - 1e-9)
        {
            _pullAt = double.PositiveInfinity;
            (_pulledAt, _giveUpAt) = (now, now + _plan.GiveUpSeconds - _pulledSeconds);
            _notes.Event(StrokeEventKind.TriggerPulled, before);
            StrokeSwitch.Pull(_equations, _integrator.State);
        }
        else
        {
            (_switchOffAt, _giveUpAt) = (double.PositiveInfinity, double.PositiveInfinity);
            _endAt = Math.Min(_endAt, now + (_opened ? LongestReturnSeconds : SettleSeconds));
            _notes.Event(_opened ? StrokeEventKind.MotorSwitchedOff : StrokeEventKind.GivenUp, before);
            StrokeSwitch.Release(_equations, _integrator.State);
        }

        _integrator.Restart();
    }
}
