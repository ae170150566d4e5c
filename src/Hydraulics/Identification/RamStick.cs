using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// How soft oil, ram and frame are together. Friction holds the ram: rising pressure moves it only past the highest force it has come to, falling
/// pressure only after twice the friction. Between the two the oil alone gives way, so a tool unloads stiffer than it loads.
/// </summary>
internal struct RamStick(StrokeParameters tool, OilTable table, in ToolState state, double volumeCubicMetres, double pascals)
{
    private readonly double _area = tool.RamSquareMetres;
    private readonly double _frame = tool.RamSquareMetres * tool.RamSquareMetres / tool.FrameNewtonsPerMetre;
    private readonly double _seal = state.SealShare, _dry = state.DryNewtons, _softness = state.Softness;
    private readonly double _air = state.Air;

    /// <summary>Over so much the ram gives way, so that the pressure depends smoothly on every figure.</summary>
    private const double StartsPascals = 2e5, TurnsPascals = 0.4e5;

    /// <summary>Pressure above which the ram moves outwards.</summary>
    public double MovesAbovePascals { get; private set; } = pascals;

    /// <summary>Volume given way by pascal, m³/Pa, when the flow raises or lowers the pressure.</summary>
    public readonly double Compliance(double pascals, bool rising, double chamberCubicMetres = 0)
    {
        var oil = (volumeCubicMetres + chamberCubicMetres) / table.ModulusPascals(pascals, _air);
        var past = rising ? pascals - MovesAbovePascals : MovesAbovePascals - Band(MovesAbovePascals) - pascals;
        var slides = Math.Clamp(1 + past / (rising ? StartsPascals : TurnsPascals), 0, 1);
        return _softness * (oil + slides * _frame * (rising ? 1 - _seal : 1 + _seal));
    }

    public void At(double pascals)
    {
        if (pascals > MovesAbovePascals)
            MovesAbovePascals = pascals;
        else if (pascals < MovesAbovePascals - Band(MovesAbovePascals))
            MovesAbovePascals = (pascals + 2 * _dry / _area) / (1 - 2 * _seal);
    }

    /// <summary>Twice the friction as a pressure, Pa.</summary>
    private readonly double Band(double pascals) => 2 * (_seal * pascals + _dry / _area);
}
