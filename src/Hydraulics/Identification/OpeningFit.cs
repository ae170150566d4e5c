using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// The last turn before the relief opens and the first milliseconds after: where the true pressure stood when the poppet was lifted. Pump and
/// oil are those of the whole fit; the sensor's lag is part of the model, so no reading is differentiated.
/// </summary>
internal sealed class OpeningFit : IResiduals
{
    /// <summary>Pressure at the first row and at opening in bar, ln of a factor on the flow, ln of delay, of the poppet's time constant, of the open area.</summary>
    private const int Start = 0, Opens = 1, LogFlow = 2, LogDelay = 3, LogLift = 4, LogArea = 5, Count = 6;

    private const int PartsPerMillisecond = 8;

    private readonly StrokeEvidence _evidence;
    private readonly StrokeParameters _tool;
    private readonly ToolState _state;
    private readonly Span _rows;
    private readonly double _startAngle, _deviation;
    private readonly Prior[] _priors;

    private OpeningFit(StrokeEvidence evidence, ToolState state, BuildPart build, double startAngle)
    {
        (_evidence, _tool, _state) = (evidence, evidence.Tool, state);
        var (signal, opened) = (evidence.Signal, evidence.Marks.Opened);
        var from = Math.Max(build.Rise.Rows.From, opened - signal.Rows(0.8 * StrokeMarks.TurnSeconds(_tool) + 3 * _tool.SensorSeconds));
        _rows = new(from, Math.Min(opened + signal.Rows(0.004 + _tool.SensorSeconds), signal.Count - 2));
        _startAngle = startAngle + build.Rise.Angle(state, from);
        _deviation = Math.Max(signal.NoisePascals, Math.Min(build.DeviationPascals, 4e5));
        var (first, peak) = (StrokeMarks.Mean(signal.Pascals!, from, from + 1) / 1e5, signal.Pascals![opened] / 1e5);
        _priors =
        [
            new(first, 10, 0, 3000, 1e-2),
            new(peak, 60, 0.5 * peak, 1.5 * peak, 1e-2),
            new(0, 0.06, -0.5, 0.5, 1e-3),
            new(Math.Log(_tool.ReliefDelaySeconds), 0.4, Math.Log(0.1 * _tool.ReliefDelaySeconds), Math.Log(5 * _tool.ReliefDelaySeconds), 1e-3),
            new(Math.Log(_tool.ReliefSeconds), 0.4, Math.Log(0.1 * _tool.ReliefSeconds), Math.Log(5 * _tool.ReliefSeconds), 1e-3),
            new(Math.Log(_tool.ReliefOpenSquareMetres), 0.7, Math.Log(0.02 * _tool.ReliefOpenSquareMetres), Math.Log(30 * _tool.ReliefOpenSquareMetres), 1e-3),
        ];
    }

    public int Unknowns => Count;

    public int Blocks => 2;

    /// <summary>Opening pressure and its standard deviation in pascals; null where the opening is not seen finely enough.</summary>
    public static (double Pascals, double Deviation)? Of(StrokeEvidence evidence, FittedLeaks best)
    {
        var opened = evidence.Marks.Opened;
        var last = evidence.Builds.Count - 1;
        if (opened < 0 || last < 0 || !evidence.TurnsAreSeen || evidence.Builds[last].Rise.Rows.To < opened - evidence.Signal.Rows(0.03))
            return null;
        var x = best.Best.Unknowns;
        var fit = new OpeningFit(evidence, best.Problem.StateOf(x), evidence.Builds[last], x[best.Problem.PlaceOfBuild(last) + Unknown.Angle]);
        Minimum? found = null;
        foreach (var above in new[] { 0.0, 4, 10 })
        {
            var start = fit._priors.Select(p => p.Mean).ToArray();
            start[Opens] += above + evidence.Tool.SensorSeconds * 2500;
            var other = LeastSquares.Solve(fit, start, 40);
            found = found is null || other.Cost < found.Cost ? other : found;
        }

        if (PositiveMatrix.Inverse(found!.Normal) is not { } covariance)
            return null;
        var misfit = Math.Max(1, Math.Sqrt(2 * found.Cost / (fit._rows.Length - 3)));
        return (found.Unknowns[Opens] * 1e5, 1e5 * misfit * Math.Sqrt(covariance[Opens * Count + Opens]));
    }

    public int Rows(int block) => block == 0 ? _rows.Length : Count;

    public bool Depends(int block, int unknown) => true;

    /// <summary>In the unit of the unknown.</summary>
    public double Step(int unknown) => _priors[unknown].Step;

    public (double Least, double Most) Range(int unknown) => (_priors[unknown].Least, _priors[unknown].Most);

    public void Evaluate(int block, ReadOnlySpan<double> unknowns, Span<double> residuals)
    {
        if (block == 1)
        {
            for (var i = 0; i < Count; i++)
                residuals[i] = (unknowns[i] - _priors[i].Mean) / _priors[i].Deviation;
            return;
        }

        Run(unknowns, residuals);
        var settled = _evidence.Signal.Rows(3 * _tool.SensorSeconds);
        for (var i = 0; i < residuals.Length; i++)
        {
            // Where it falls steeply, the moment of a row and the opening of the valve matter more than noise.
            var steep = i > 0 ? Math.Abs(_evidence.Signal.Pascals![_rows.From + i] - _evidence.Signal.Pascals![_rows.From + i - 1]) : 0;
            var deviation = _deviation + (_rows.From + i > _evidence.Marks.Opened ? 0.04 * steep : 0);
            residuals[i] = i < settled || !_evidence.Signal.PressureIsRead[_rows.From + i] ? 0 : (residuals[i] - _evidence.Signal.Pascals![_rows.From + i]) / deviation;
        }
    }

    private void Run(ReadOnlySpan<double> x, Span<double> reading)
    {
        var state = _state;
        var step = _evidence.Signal.Step;
        var parts = Math.Max(1, (int)Math.Round(step * 1000 * PartsPerMillisecond));
        var h = step / parts;
        var factor = Math.Exp(x[LogFlow]);
        var (delay, lift, jet) = (Math.Exp(x[LogDelay]), Math.Exp(x[LogLift]), Math.Exp(x[LogArea]) * Math.Sqrt(2 / _tool.Density));
        var pump = new PumpFlow(_tool, _evidence.Oil, state, false, _startAngle);
        var pascals = x[Start] * 1e5;
        var stick = new RamStick(_tool, _evidence.Oil, state, _tool.DeadCubicMetres + _tool.RamSquareMetres * _tool.StrokeMetres, pascals);
        var (shown, angle, opens, since) = (pascals, _startAngle, x[Opens] * 1e5, double.NegativeInfinity);
        var (lag, keeps) = (_tool.SensorSeconds, Math.Exp(-h / _tool.SensorSeconds));
        reading[0] = shown;
        for (var row = _rows.From; row < _rows.To; row++)
        {
            var amperes = (_evidence.Drive.Charge[row + 1] - _evidence.Drive.Charge[row]) / step;
            var speed = Math.Max(0, state.SupplyVolts - state.ResistanceOhms * amperes) / (_tool.TorqueConstant * _tool.GearRatio);
            for (var part = 0; part < parts; part++)
            {
                var before = pascals;
                pump.Advance(angle, speed, pascals, h);
                var flow = factor * pump.Flow(pascals) - state.Bypass * state.Driving(pascals) - state.WeepFlow(pascals);
                if (since > delay)
                    flow -= jet * (1 - Math.Exp(-(since - delay) / lift)) * Math.Sqrt(Math.Max(pascals, 0));
                pascals = Math.Max(0, pascals + h * flow / stick.Compliance(pascals, flow >= 0, pump.ChamberCubicMetres));
                stick.At(pascals);
                since = since >= 0 ? since + h : pascals >= opens ? h * (pascals - opens) / Math.Max(pascals - before, 1) : since;
                angle += h * speed;
                var rise = (pascals - before) / h;
                shown = pascals - lag * rise + (shown - before + lag * rise) * keeps;
            }

            reading[row + 1 - _rows.From] = shown;
        }
    }
}
