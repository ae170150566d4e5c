using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>A part of the evidence that the problem weighs: a rise under power.</summary>
/// <param name="Rise">Its model.</param>
/// <param name="AtFirstPascals">Pressure as read at its first row.</param>
/// <param name="PauseStartPascals">Pressure at which the pause before it began; 0 when there was none.</param>
/// <param name="PauseEndPascals">Pressure at which it ended.</param>
internal sealed record BuildPart(PoweredBuild Rise, double AtFirstPascals, double PauseStartPascals, double PauseEndPascals)
{
    /// <summary>Standard deviation of one row, Pa; grows by what the model cannot follow.</summary>
    public double DeviationPascals { get; set; }
}

/// <summary>A pause as means of short spans.</summary>
internal sealed record PausePart(PauseDecay Decay, double[] Pascals, double FromSeconds)
{
    public double DeviationPascals { get; set; }
}

/// <summary>What one stroke shows, against the unknowns of one hypothesis. A prior is a residual like any other.</summary>
internal sealed class StrokeProblem : IResiduals
{
    private readonly StrokeEvidence _evidence;
    private readonly StrokeParameters _tool;
    private readonly Prior[] _priors;

    /// <summary>Leaks that are sound: too small to be felt while the pump runs.</summary>
    private readonly bool[] _sound = new bool[Unknown.Shared];

    public StrokeProblem(StrokeEvidence evidence, LeakSet leaks)
    {
        (_evidence, _tool) = (evidence, evidence.Tool);
        _priors = Priors.Of(evidence, leaks);
        (_sound[Unknown.LogDelivery], _sound[Unknown.LogChamber], _sound[Unknown.LogBypass]) = (!leaks.Delivery, !leaks.Chamber, !leaks.Bypass);
    }

    public int Unknowns => _priors.Length;

    /// <summary>Builds, pauses, turns to the closing, drive, priors.</summary>
    public int Blocks => Builds + Pauses + 3;

    public IReadOnlyList<Prior> AllPriors => _priors;

    private int Builds => _evidence.Builds.Count;

    private int Pauses => _evidence.Pauses.Count;

    public int Rows(int block) => block < Builds ? _evidence.Builds[block].Rise.Rows.Length
        : block < Builds + Pauses ? _evidence.Pauses[block - Builds].Pascals.Length
        : block == Builds + Pauses ? 1 : block == Builds + Pauses + 1 ? 2 : _priors.Length;

    /// <summary>In the unit of the unknown.</summary>
    public double Step(int unknown) => _priors[unknown].Step;

    public (double Least, double Most) Range(int unknown) => (_priors[unknown].Least, _priors[unknown].Most);

    public bool Depends(int block, int unknown)
    {
        if (_priors[unknown].Fixed)
            return block > Builds + Pauses + 1;
        if (block < Builds)
            return unknown < Unknown.Shared ? !_sound[unknown] : OfBuild(unknown) == block;
        if (block < Builds + Pauses)
            return unknown < Unknown.Shared ? unknown is >= Unknown.LogDelivery and <= Unknown.LogSeal : OfPause(unknown) == block - Builds;
        if (block == Builds + Pauses)
            return unknown < Unknown.Shared;
        return block > Builds + Pauses + 1 || unknown is Unknown.Volts or Unknown.LogOhms;
    }

    public int PlaceOfBuild(int build) => Unknown.Shared + build * Unknown.PerBuild;

    public int PlaceOfPause(int pause) => Unknown.Shared + Builds * Unknown.PerBuild + pause * Unknown.PerPause;

    public void Evaluate(int block, ReadOnlySpan<double> unknowns, Span<double> residuals)
    {
        var state = StateOf(unknowns);
        if (block < Builds)
        {
            var part = _evidence.Builds[block];
            Reading(block, unknowns, residuals);
            for (var i = 0; i < residuals.Length; i++)
            {
                var row = part.Rise.Rows.From + i;
                residuals[i] = _evidence.Signal.PressureIsRead[row] && i >= part.Rise.SettleRows ? (residuals[i] - _evidence.Signal.Pascals![row]) / part.DeviationPascals : 0;
            }
        }
        else if (block < Builds + Pauses)
        {
            var part = _evidence.Pauses[block - Builds];
            Pause(block - Builds, unknowns, residuals);
            for (var i = 0; i < residuals.Length; i++)
                residuals[i] = (residuals[i] - part.Pascals[i]) / part.DeviationPascals;
        }
        else if (block == Builds + Pauses)
        {
            residuals[0] = _evidence.Turns?.Residual(state) ?? 0;
        }
        else if (block == Builds + Pauses + 1)
        {
            residuals[0] = _evidence.Drive.BackVolts is { } back ? (state.SupplyVolts - state.ResistanceOhms * _evidence.Drive.AdvanceAmperes - back) / (0.0008 * back) : 0;
            residuals[1] = _evidence.Drive.RunUpOhms is { } ohms ? Math.Log(state.ResistanceOhms / ohms) / 0.15 : 0;
        }
        else
        {
            for (var i = 0; i < _priors.Length; i++)
                residuals[i] = (unknowns[i] - _priors[i].Mean) / _priors[i].Deviation;
        }
    }

    /// <summary>Pressure of the sensor in a build.</summary>
    public double Reading(int build, ReadOnlySpan<double> unknowns, Span<double> reading)
    {
        var state = StateOf(unknowns);
        var part = _evidence.Builds[build];
        var place = PlaceOfBuild(build);
        var (start, closed) = part.Rise.FromFoot ? (part.AtFirstPascals, unknowns[place + Unknown.Begin]) : (unknowns[place + Unknown.Begin] * 1e5, 0);
        var moves = part.PauseStartPascals > 0
            ? Math.Min(part.PauseStartPascals, part.PauseEndPascals + 2 * (state.SealShare * part.PauseEndPascals + state.DryNewtons / _tool.RamSquareMetres))
            : start;
        return part.Rise.Run(state, unknowns[place + Unknown.Angle], start, closed, moves, reading);
    }

    public void Pause(int pause, ReadOnlySpan<double> unknowns, Span<double> pascals)
    {
        var place = PlaceOfPause(pause);
        _evidence.Pauses[pause].Decay.Run(StateOf(unknowns), unknowns[place + Unknown.Start] * 1e5, unknowns[place + Unknown.Cool] * 1e5, Math.Exp(unknowns[place + Unknown.LogCoolSeconds]), pascals);
    }

    public ToolState StateOf(ReadOnlySpan<double> x) => ToolState.Sound(_tool) with
    {
        Filling = x[Unknown.Filling],
        Delivery = Math.Exp(x[Unknown.LogDelivery]),
        Chamber = Math.Exp(x[Unknown.LogChamber]),
        Bypass = Math.Exp(x[Unknown.LogBypass]),
        Power = x[Unknown.Power],
        Weep = x[Unknown.LogWeep] < -100 ? 0 : Math.Exp(x[Unknown.LogWeep]) * _evidence.SoundFlow / ((1 - x[Unknown.WeepShare]) * _evidence.OpeningPascals),
        WeepFromPascals = x[Unknown.WeepShare] * _evidence.OpeningPascals,
        Air = x[Unknown.Air],
        Softness = Math.Exp(x[Unknown.LogSoftness]),
        SealShare = Math.Exp(x[Unknown.LogSeal]),
        DryNewtons = _evidence.DryNewtons,
        SupplyVolts = x[Unknown.Volts],
        ResistanceOhms = Math.Exp(x[Unknown.LogOhms]),
        VoidShare = x[Unknown.VoidShare],
    };

    private static int OfBuild(int unknown) => (unknown - Unknown.Shared) / Unknown.PerBuild;

    private int OfPause(int unknown)
    {
        var after = unknown - PlaceOfPause(0);
        return after < 0 ? -1 : after / Unknown.PerPause;
    }
}
