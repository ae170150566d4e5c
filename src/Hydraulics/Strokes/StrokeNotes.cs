using System.Collections.Immutable;
using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>What is noted down on the way: events, samples on the recording's clock, highest values.</summary>
internal sealed class StrokeNotes(StrokeEquations equations, StiffIntegrator integrator, double? samplesPerSecond)
{
    private const int MostSamples = 2_000_000, LooksPerStep = 6;

    private readonly ImmutableArray<StrokeEvent>.Builder _events = ImmutableArray.CreateBuilder<StrokeEvent>();
    private readonly ImmutableArray<StrokeSample>.Builder _samples = ImmutableArray.CreateBuilder<StrokeSample>();
    private readonly double[] _state = new double[StrokeEquations.States], _slope = new double[StrokeEquations.States];
    private double _peak, _readingPeak, _mostDrawn;

    /// <summary>Changes of law so far, named or not.</summary>
    public int EventCount { get; private set; }

    /// <summary>Notes the last step. The laws are still those of the step.</summary>
    public void Step()
    {
        var (from, to) = (integrator.StepStartSeconds, integrator.Seconds);
        for (var look = 1; look <= LooksPerStep; look++)
        {
            integrator.At(from + (to - from) * look / LooksPerStep, _state);
            _peak = Math.Max(_peak, _state[StrokeEquations.Pressure]);
            _readingPeak = Math.Max(_readingPeak, _state[StrokeEquations.Reading]);
            _mostDrawn = Math.Max(_mostDrawn, _state[StrokeEquations.Drawn]);
        }

        if (samplesPerSecond is not { } rate)
            return;
        while (_samples.Count / rate <= to && _samples.Count < MostSamples)
        {
            var at = _samples.Count / rate;
            integrator.At(Math.Max(at, from), _state);
            _samples.Add(new(at, _state[StrokeEquations.Reading], equations.Amperes(_state), _state[StrokeEquations.Pressure], _state[StrokeEquations.Position]));
        }
    }

    /// <summary>How things stand now, under the laws that hold now.</summary>
    public StrokeEvent Now()
    {
        var state = integrator.State;
        equations.Slope(state, _slope);
        return new(StrokeEventKind.TriggerPulled, integrator.Seconds, state[StrokeEquations.Pressure], _slope[StrokeEquations.Pressure], equations.Amperes(state), state[StrokeEquations.Position]);
    }

    public void Event(StrokeEventKind? kind, StrokeEvent before)
    {
        EventCount++;
        if (kind is { } named)
            _events.Add(before with { Kind = named });
    }

    public Stroke Finish(StrokeEnd end) => new(end, _events.ToImmutable(), _samples.ToImmutable())
    {
        PeakPascals = _peak,
        ReadingPeakPascals = _readingPeak,
        MostDrawnCubicMetres = _mostDrawn,
        Steps = integrator.StepsTaken,
        StepsRefused = integrator.StepsRefused,
    };
}
