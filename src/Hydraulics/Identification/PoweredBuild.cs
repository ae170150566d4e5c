using System.Runtime.CompilerServices;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// Pressure while the pump runs against closed dies, as a function of the pump's angle, which follows from voltage and current.
/// One piston delivers a half sine; first chamber and displaced oil must be compressed. In the suction half the delivery check leaks,
/// in the delivery half inlet check and clearance do. The sensor follows as a first-order lag.
/// </summary>
internal sealed class PoweredBuild
{
    private readonly StrokeSignal _signal;
    private readonly StrokeParameters _tool;
    private readonly OilTable _oil;
    private readonly double[] _charge;
    private readonly bool _byTurn;

    /// <param name="signal">Recording with pressure and current (or a current worked out from the pressure).</param>
    /// <param name="tool">Service data.</param>
    /// <param name="oil">Its oil.</param>
    /// <param name="charge">Charge drawn up to each row, A·s.</param>
    /// <param name="rows">First and last row of the rise.</param>
    /// <param name="volumeCubicMetres">Oil behind the ram.</param>
    /// <param name="byTurn">Each stroke of the pump is followed; else the mean of a turn.</param>
    /// <param name="fromFoot">The rise begins when the dies close, within the rows; else it is under way at the first row.</param>
    public PoweredBuild(StrokeSignal signal, StrokeParameters tool, OilTable oil, double[] charge, Span rows, double volumeCubicMetres, bool byTurn, bool fromFoot)
    {
        (_signal, _tool, _oil, _charge, _byTurn) = (signal, tool, oil, charge, byTurn);
        (Rows, VolumeCubicMetres, FromFoot) = (rows, volumeCubicMetres, fromFoot);
    }

    public Span Rows { get; }

    public double VolumeCubicMetres { get; }

    public bool FromFoot { get; }

    /// <summary>Rows at the beginning in which the sensor still remembers what came before.</summary>
    public int SettleRows => FromFoot ? 0 : _signal.Rows(4 * _tool.SensorSeconds);

    /// <summary>Pump angle gained from the first row to a row, rad.</summary>
    public double Angle(in ToolState state, int row) =>
        (state.SupplyVolts * (row - Rows.From) * _signal.Step - state.ResistanceOhms * (_charge[row] - _charge[Rows.From])) / (_tool.TorqueConstant * _tool.GearRatio);

    /// <summary>Works the rise out.</summary>
    /// <param name="state">The tool as tried.</param>
    /// <param name="startAngle">Pump angle at the first row, rad; delivery begins at 0.</param>
    /// <param name="startPascals">Pressure at the first row.</param>
    /// <param name="closedSeconds">From the first row until the dies are closed; not above 0 when they are.</param>
    /// <param name="movesAbovePascals">Pressure above which the ram moves at first.</param>
    /// <param name="reading">Filled with the sensor's pressure at each row.</param>
    /// <returns>True pressure at the last row.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Run(in ToolState state, double startAngle, double startPascals, double closedSeconds, double movesAbovePascals, Span<double> reading)
    {
        var step = _signal.Step;
        var substeps = Math.Max(1, (int)Math.Ceiling(step / 5.1e-4));
        var h = step / substeps;
        var stick = new RamStick(_tool, _oil, state, VolumeCubicMetres, Math.Max(movesAbovePascals, startPascals));
        var pump = new PumpFlow(_tool, _oil, state, _byTurn, startAngle);
        var perRadian = 1 / (_tool.TorqueConstant * _tool.GearRatio);
        var (pascals, shown, angle) = (startPascals, startPascals, startAngle);
        var lag = _tool.SensorSeconds;
        var keeps = Math.Exp(-h / lag);
        reading[0] = shown;
        for (var row = Rows.From; row < Rows.To; row++)
        {
            var speed = Math.Max(0, state.SupplyVolts - state.ResistanceOhms * (_charge[row + 1] - _charge[row]) / step) * perRadian;
            for (var part = 0; part < substeps; part++)
            {
                var left = (row - Rows.From) * step + (part + 1) * h - closedSeconds;
                var share = closedSeconds <= 0 ? 1 : Math.Clamp(left / h, 0, 1);
                var before = pascals;
                if (share <= 0)
                {
                    pump.Advance(angle, speed, pascals, h);
                }
                else
                {
                    var dt = share * h;
                    pump.Advance(angle + (h - dt) * speed, speed, pascals, dt);
                    var first = Rate(pump, stick, state, pascals);
                    var half = Rate(pump, stick, state, pascals + 0.5 * dt * first);
                    pascals = Math.Max(pascals + dt * half, -0.5e5);
                    stick.At(pascals);
                }

                angle += h * speed;
                // Exact for a pressure that rises evenly over the part.
                var rise = (pascals - before) / h;
                shown = pascals - lag * rise + (shown - before + lag * rise) * keeps;
            }

            reading[row + 1 - Rows.From] = shown;
        }

        return pascals;
    }

    private static double Rate(in PumpFlow pump, in RamStick stick, in ToolState state, double pascals)
    {
        var flow = pump.Flow(pascals) - state.Bypass * state.Driving(pascals) - state.WeepFlow(pascals);
        return flow / stick.Compliance(pascals, flow >= 0, pump.ChamberCubicMetres);
    }
}
