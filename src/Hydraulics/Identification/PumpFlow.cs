using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// What one piston brings to the high-pressure side. In the delivery half of a turn the chamber is compressed first, by the piston and by what leaks
/// back into it; then it delivers a half sine. In the suction half it expands, and the delivery check leaks against an emptying chamber.
/// </summary>
internal struct PumpFlow
{
    private readonly StrokeParameters _tool;
    private readonly OilTable _oil;
    private readonly ToolState _state;
    private readonly double _filled, _void, _stroke;
    private readonly bool _byTurn;

    /// <summary>Oil pressed into the chamber since delivery began, m³.</summary>
    private double _pressed;

    /// <summary>Share of the step in which it delivers, pressure in the chamber as a share, flow displaced, volume in the chamber.</summary>
    private double _open, _chamberShare, _displaced, _volume;

    /// <param name="tool">Service data.</param>
    /// <param name="oil">Its oil.</param>
    /// <param name="state">The tool as tried.</param>
    /// <param name="byTurn">Averaged over a turn.</param>
    /// <param name="angle">Pump angle at the beginning, rad; delivery begins at 0.</param>
    public PumpFlow(StrokeParameters tool, OilTable oil, in ToolState state, bool byTurn, double angle)
    {
        (_tool, _oil, _state, _byTurn) = (tool, oil, state, byTurn);
        _filled = state.Filling * tool.DisplacementCubicMetres;
        _void = Math.Max(0, state.VoidShare * (tool.DisplacementCubicMetres - _filled));
        _stroke = _filled + _void;
        _pressed = Math.Sin(angle) > 0 ? Math.Max(0, 0.5 * _stroke * (1 - Math.Cos(angle)) - _void) : 0;
    }

    /// <summary>Goes on by one step.</summary>
    /// <param name="angle">Pump angle at its beginning, rad.</param>
    /// <param name="speed">Pump speed, rad/s.</param>
    /// <param name="pascals">Pressure at its beginning.</param>
    /// <param name="seconds">Its length.</param>
    public void Advance(double angle, double speed, double pascals, double seconds)
    {
        if (_byTurn)
        {
            _displaced = Math.Max(0, _filled - (_tool.ChamberCubicMetres + _filled) * _oil.Squeeze(pascals)) * speed / (2 * Math.PI);
            return;
        }

        var (sine, cosine) = Math.SinCos(angle + 0.5 * speed * seconds);
        var squeeze = _oil.Squeeze(pascals);
        if (sine <= 0)
        {
            var expanded = 0.5 * _stroke * (1 + cosine);
            (_open, _displaced, _pressed, _volume) = (0, 0, 0, 0);
            _chamberShare = Math.Max(0, 1 - expanded / (_tool.ChamberCubicMetres * squeeze + 1e-15));
            return;
        }

        _displaced = 0.5 * _stroke * sine * speed;
        var needed = (_tool.ChamberCubicMetres + _filled) * squeeze + 1e-15;
        var driving = _state.Driving(pascals);
        _chamberShare = Math.Clamp(_pressed / needed, 0, 1);
        var gone = 0.5 * _stroke * (1 - cosine) - _void;
        var closed = Math.Clamp(0.5 + gone / (_displaced * seconds + 1e-15), 0, 1);
        var into = seconds * Math.Max(0, closed * _displaced + (_state.Delivery * (1 - _chamberShare) - _state.Chamber * _chamberShare) * driving);
        _pressed += into;
        _open = Math.Clamp((_pressed - needed) / (into + 1e-15), 0, 1);
        _chamberShare = Math.Clamp(0.5 * (_chamberShare + _pressed / needed), 0, 1);
        _volume = _open * (_tool.ChamberCubicMetres + 0.5 * _stroke * (1 + cosine));
    }

    /// <summary>What the chamber adds to the volume of the high-pressure side while it delivers, m³.</summary>
    public readonly double ChamberCubicMetres => _volume;

    /// <summary>Flow into the high-pressure side in this step, m³/s.</summary>
    public readonly double Flow(double pascals)
    {
        var driving = _state.Driving(pascals);
        var back = -_state.Delivery * driving;
        if (_byTurn)
            return Math.Max(0, _displaced - 0.5 * _state.Chamber * driving) + 0.5 * back;
        var shut = back * (1 - _chamberShare);
        return shut + _open * (Math.Max(_displaced - _state.Chamber * driving, back) - shut);
    }
}
