using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>
/// The reduced stroke model, averaged over a turn of the pump: motor and gearbox, pump, oil, ram, relief, sensor.
/// Each law and its partial derivatives are worked out together in <see cref="Laws"/>, so slope and Jacobian cannot drift apart.
/// </summary>
internal sealed partial class StrokeEquations(StrokeParameters tool, StrokePlan plan) : IStiffSystem
{
    public const int Speed = 0, Pressure = 1, Position = 2, Velocity = 3, Drawn = 4, Lift = 5, Reading = 6, States = 7;

    /// <summary>The laws that hold at present.</summary>
    public StrokeModes Modes = StrokeModes.AtRest(plan);

    private readonly StrokeLoad.Connector? _connector = plan.Load as StrokeLoad.Connector;
    private readonly OilWithAir _oilAlone = tool.Oil with { AirShare = 0 };

    public StrokeParameters Tool => tool;

    public int Size => States;

    public void Slope(ReadOnlySpan<double> state, Span<double> slope)
    {
        var laws = LawsAt(state);
        slope.Clear();
        if (Modes.Turns)
            slope[Speed] = (laws.MotorTorque - tool.MotorFrictionNewtonMetres - laws.LoadTorque) / tool.Inertia;
        slope[Pressure] = laws.Modulus / laws.Volume * (laws.Flow - tool.RamSquareMetres * state[Velocity]);
        if (Modes.Ram is RamMode.Out or RamMode.Back)
        {
            slope[Position] = state[Velocity];
            slope[Velocity] = (laws.Push - Against * laws.Friction - tool.ViscousFriction * state[Velocity]) / tool.MassKilograms;
        }

        slope[Drawn] = laws.Flow;
        slope[Lift] = ((Modes.ReliefLifts ? 1 : 0) - state[Lift]) / tool.ReliefSeconds;
        slope[Reading] = (state[Pressure] - state[Reading]) / tool.SensorSeconds;
    }

    public void Jacobian(ReadOnlySpan<double> state, Span<double> jacobian)
    {
        var laws = LawsAt(state);
        jacobian.Clear();
        if (Modes.Turns)
        {
            jacobian[Speed * States + Speed] = laws.MotorBySpeed / tool.Inertia;
            jacobian[Speed * States + Pressure] = -laws.LoadByPressure / tool.Inertia;
        }

        var stiffness = laws.Modulus / laws.Volume;
        var net = laws.Flow - tool.RamSquareMetres * state[Velocity];
        var row = jacobian.Slice(Pressure * States, States);
        row[Speed] = stiffness * laws.FlowBySpeed;
        row[Pressure] = laws.ModulusByPressure / laws.Volume * net + stiffness * laws.FlowByPressure;
        row[Position] = -stiffness / laws.Volume * tool.RamSquareMetres * net;
        row[Velocity] = -stiffness * tool.RamSquareMetres;
        row[Lift] = stiffness * laws.FlowByLift;
        if (Modes.Ram is RamMode.Out or RamMode.Back)
        {
            jacobian[Position * States + Velocity] = 1;
            row = jacobian.Slice(Velocity * States, States);
            row[Pressure] = (tool.RamSquareMetres - Against * laws.FrictionByPressure) / tool.MassKilograms;
            row[Position] = laws.PushByPosition / tool.MassKilograms;
            row[Velocity] = -tool.ViscousFriction / tool.MassKilograms;
        }

        row = jacobian.Slice(Drawn * States, States);
        (row[Speed], row[Pressure], row[Lift]) = (laws.FlowBySpeed, laws.FlowByPressure, laws.FlowByLift);
        jacobian[Lift * States + Lift] = -1 / tool.ReliefSeconds;
        jacobian[Reading * States + Pressure] = 1 / tool.SensorSeconds;
        jacobian[Reading * States + Reading] = -1 / tool.SensorSeconds;
    }

    /// <summary>Current from the battery, in amperes.</summary>
    public double Amperes(ReadOnlySpan<double> state) => Modes.Drive switch
    {
        DriveMode.Limited => tool.CurrentLimitAmperes,
        DriveMode.Free => (tool.SupplyVolts - tool.TorqueConstant * state[Speed]) / tool.ResistanceOhms,
        DriveMode.Stalled => tool.StallAmperes,
        _ => 0,
    };

    /// <summary>Friction works against the way the ram moves.</summary>
    private double Against => Modes.Ram == RamMode.Back ? -1 : 1;
}
