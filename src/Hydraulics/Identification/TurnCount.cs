using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Pump turns until the dies close against the volume that they must have swept: gives the filling.</summary>
/// <param name="Tool">Service data.</param>
/// <param name="FreeSeconds">Motor time below the current limit.</param>
/// <param name="FreeCharge">Charge drawn in it, A·s.</param>
/// <param name="LimitedSeconds">Time at the limit, over which the speed grows evenly.</param>
/// <param name="CoastTurns">Turns after the trigger was let go, guessed.</param>
/// <param name="PumpingPascalSeconds">∫p dt with the motor running.</param>
/// <param name="StandingPascalSeconds">∫p dt with it standing.</param>
/// <param name="AtClosingPascals">Pressure when the dies close.</param>
/// <param name="DeviationShare">Standard deviation of the balance as a share of the volume swept.</param>
internal sealed record TurnCount(StrokeParameters Tool, double FreeSeconds, double FreeCharge, double LimitedSeconds, double CoastTurns, double PumpingPascalSeconds, double StandingPascalSeconds, double AtClosingPascals, double DeviationShare)
{
    /// <summary>What was pumped less what was needed, a count of standard deviations.</summary>
    public double Residual(in ToolState state)
    {
        var swept = Tool.RamSquareMetres * Tool.StrokeMetres;
        return (Turns(state) * PerTurn(state) - Needed(state, swept)) / (DeviationShare * swept);
    }

    /// <summary>Pump turns in all.</summary>
    public double Turns(in ToolState state)
    {
        var atLimit = Math.Max(0, state.SupplyVolts - state.ResistanceOhms * Tool.CurrentLimitAmperes);
        var voltSeconds = state.SupplyVolts * FreeSeconds - state.ResistanceOhms * FreeCharge + (LimitedSeconds > 0 ? 0.5 * atLimit * LimitedSeconds : 0);
        return Math.Max(0, voltSeconds) / (Tool.TorqueConstant * Tool.GearRatio * 2 * Math.PI) + CoastTurns;
    }

    private double PerTurn(in ToolState state)
    {
        var filled = state.Filling * Tool.DisplacementCubicMetres;
        var mean = PumpingPascalSeconds / Math.Max(1e-3, FreeSeconds + LimitedSeconds);
        return filled - (Tool.ChamberCubicMetres + filled) * (Tool.Oil with { AirShare = 0 }).Squeeze(mean).Share;
    }

    private double Needed(in ToolState state, double swept)
    {
        var oil = state.Oil(Tool);
        var squeezed = Tool.DeadCubicMetres * oil.Squeeze(Math.Min(AtClosingPascals, 20e5)).Share
            + (Tool.DeadCubicMetres + swept) * Math.Max(0, oil.Squeeze(AtClosingPascals).Share - oil.Squeeze(Math.Min(AtClosingPascals, 20e5)).Share);
        var pumping = FreeSeconds + LimitedSeconds;
        var leaked = (state.Bypass + 0.5 * (state.Delivery + state.Chamber)) * state.Driving(PumpingPascalSeconds / Math.Max(1e-3, pumping)) * pumping + state.Standing(Tool.Inlet) * StandingPascalSeconds;
        return swept + squeezed + leaked;
    }
}
