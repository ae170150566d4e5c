namespace Ramwright.Hydraulics.Strokes;

/// <summary>The laws of the stroke at one state, with their partial derivatives. Torques in N·m, flows in m³/s, forces in N.</summary>
internal ref struct Laws
{
    public double MotorTorque, MotorBySpeed, LoadTorque, LoadByPressure;

    /// <summary>Into the high-pressure side: pump less leaks less relief; nothing while the reservoir is dry.</summary>
    public double Flow, FlowBySpeed, FlowByPressure, FlowByLift;

    /// <summary>What would flow if the reservoir held oil.</summary>
    public double FlowIfFilled;

    /// <summary>Displaced oil that is left after squeezing and the chamber's leaks: the delivery check opens while it is positive.</summary>
    public double Delivery;

    public double Modulus, ModulusByPressure, Volume;

    /// <summary>Force on the ram outwards, friction left out.</summary>
    public double Push, PushByPosition;

    public double Friction, FrictionByPressure;
}

internal sealed partial class StrokeEquations
{
    /// <summary>Below this pressure in pascals the relief's square root is rounded off, so that its slope stays finite.</summary>
    private const double RoundedPascals = 2_000;

    public Laws LawsAt(ReadOnlySpan<double> state)
    {
        var laws = new Laws();
        AddDrive(ref laws, state);
        AddFlows(ref laws, state);
        (laws.Modulus, laws.ModulusByPressure) = tool.Oil.Modulus(state[Pressure]);
        laws.Volume = tool.DeadCubicMetres + tool.RamSquareMetres * Math.Max(state[Position], 0);
        AddForces(ref laws, state);
        return laws;
    }

    /// <summary>Direct-current motor: torque k·i, i = (U − k·ω)/R; the pump asks displacement × pressure / 2π.</summary>
    private void AddDrive(ref Laws laws, ReadOnlySpan<double> state)
    {
        var damping = tool.TorqueConstant * tool.TorqueConstant / tool.ResistanceOhms;
        (laws.MotorTorque, laws.MotorBySpeed) = Modes.Drive switch
        {
            DriveMode.Limited => (tool.TorqueConstant * tool.CurrentLimitAmperes, 0),
            DriveMode.Free => (tool.TorqueConstant * tool.SupplyVolts / tool.ResistanceOhms - damping * state[Speed], -damping),
            DriveMode.Braking => (-damping * state[Speed], -damping),
            _ => (tool.TorqueConstant * tool.StallAmperes, 0.0),
        };
        if (Modes.Dry || state[Pressure] <= 0)
            return;
        laws.LoadByPressure = tool.FilledCubicMetres / (2 * Math.PI * tool.GearRatio * tool.GearEfficiency);
        laws.LoadTorque = laws.LoadByPressure * state[Pressure];
    }

    private void AddFlows(ref Laws laws, ReadOnlySpan<double> state)
    {
        var pressure = state[Pressure];
        var turnsPerRadian = 1 / (2 * Math.PI * tool.GearRatio);
        var (squeeze, squeezeByPressure) = _oilAlone.Squeeze(pressure); // air drawn in counts as not filled
        var squeezed = tool.ChamberCubicMetres + tool.FilledCubicMetres;
        var perTurn = tool.FilledCubicMetres - squeezed * squeeze;
        var chamberLeak = 0.5 * (tool.InletLeak + tool.PistonLeak); // in the delivery half of the turn
        laws.Delivery = turnsPerRadian * state[Speed] * perTurn - chamberLeak * pressure;

        double flow, bySpeed = 0, byPressure;
        if (!Modes.Turns)
        {
            (flow, byPressure) = (-tool.StandingLeak * pressure, -tool.StandingLeak);
        }
        else
        {
            var back = 0.5 * tool.DeliveryLeak; // in the suction half
            (flow, byPressure) = (-back * pressure, -back);
            if (Modes.Delivering)
            {
                flow += laws.Delivery;
                bySpeed = turnsPerRadian * perTurn;
                byPressure -= turnsPerRadian * state[Speed] * squeezed * squeezeByPressure + chamberLeak;
            }
        }

        flow -= tool.BypassLeak * pressure;
        byPressure -= tool.BypassLeak;
        if (Modes.Weeping)
        {
            flow -= tool.WeepLeak * (pressure - tool.WeepFromShare * tool.ReliefPascals);
            byPressure -= tool.WeepLeak;
        }

        var (jet, jetByPressure) = Jet(pressure);
        flow -= state[Lift] * jet;
        byPressure -= state[Lift] * jetByPressure;
        laws.FlowIfFilled = flow;
        if (!Modes.Dry)
            (laws.Flow, laws.FlowBySpeed, laws.FlowByPressure, laws.FlowByLift) = (flow, bySpeed, byPressure, -jet);
    }

    /// <summary>Flow through the fully open relief, an orifice: Q = area·√(2p/ρ), rounded off near zero.</summary>
    private (double Flow, double ByPressure) Jet(double pressure)
    {
        var scale = tool.ReliefOpenSquareMetres * Math.Sqrt(2 / tool.Density);
        var rounded = Math.Abs(pressure) + RoundedPascals;
        var root = Math.Sqrt(rounded);
        return (scale * pressure / root, scale * (0.5 * Math.Abs(pressure) + RoundedPascals) / (rounded * root));
    }

    private void AddForces(ref Laws laws, ReadOnlySpan<double> state)
    {
        var x = state[Position];
        laws.Push = tool.RamSquareMetres * state[Pressure] - tool.SpringPreloadNewtons - tool.SpringNewtonsPerMetre * x;
        laws.PushByPosition = -tool.SpringNewtonsPerMetre;
        if (Modes.DiesClosed)
        {
            laws.Push -= tool.FrameNewtonsPerMetre * (x - tool.StrokeMetres);
            laws.PushByPosition -= tool.FrameNewtonsPerMetre;
        }

        if (Modes.Connector == ConnectorMode.Pressed)
        {
            var (force, slope) = ConnectorForce(x);
            laws.Push -= force;
            laws.PushByPosition -= slope;
        }
        else if (Modes.Connector == ConnectorMode.Elastic)
        {
            laws.Push -= tool.FrameNewtonsPerMetre * (x - ConnectorLeftAtMetres);
            laws.PushByPosition -= tool.FrameNewtonsPerMetre;
        }

        var seal = tool.SealFrictionShare * tool.RamSquareMetres;
        laws.Friction = tool.DryFrictionNewtons + seal * Math.Max(state[Pressure], 0);
        laws.FrictionByPressure = state[Pressure] > 0 ? seal : 0;
    }

    /// <summary>Where the ram leaves a connector that has sprung back.</summary>
    private double ConnectorLeftAtMetres => Modes.ConnectorPeakMetres - ConnectorForce(Modes.ConnectorPeakMetres).Newtons / tool.FrameNewtonsPerMetre;

    private (double Newtons, double PerMetre) ConnectorForce(double x)
    {
        var left = _connector!.PlateauNewtons * Math.Exp(-(x - _connector.ContactMetres) / _connector.BuildUpMetres);
        return (_connector.PlateauNewtons - left, left / _connector.BuildUpMetres);
    }
}
