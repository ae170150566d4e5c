using Ramwright.Metrology.Quantities;

namespace Ramwright.ServiceModels.Model;

/// <summary>How the pump takes oil in.</summary>
public enum InletKind { Check, Port }

/// <summary>Level 3: what the stroke model and the relief advisor need. Each group may be absent.</summary>
public sealed record Behaviour
{
    public RamData? Ram { get; init; }
    public PumpData? Pump { get; init; }
    public DriveData? Drive { get; init; }
    public ReliefData? Relief { get; init; }
    public OilData? Oil { get; init; }

    /// <summary>Stiffness of head and frame once the dies are closed.</summary>
    public Stiffness? FrameStiffness { get; init; }

    /// <summary>Time constant of the tool's own pressure sensor, a first-order lag.</summary>
    public TimeSpan? SensorResponse { get; init; }

    /// <summary>How many last peaks the tool keeps; null when it keeps none.</summary>
    public int? MemoryDepth { get; init; }
}

/// <summary>The ram and its return spring.</summary>
public sealed record RamData(Length Diameter, Length Stroke, Volume DeadVolume)
{
    public Mass? MovingMass { get; init; }
    public Force? SpringPreload { get; init; }
    public Stiffness? SpringRate { get; init; }
    public Force? DryFriction { get; init; }

    /// <summary>Seal friction growing with pressure, as a share of pressure × area.</summary>
    public double? SealFrictionShare { get; init; }

    /// <summary>Viscous friction, N·s/m.</summary>
    public double? ViscousNewtonSecondsPerMetre { get; init; }
}

/// <summary>The piston pump.</summary>
public sealed record PumpData(Volume DisplacementPerTurn, InletKind Inlet)
{
    /// <summary>Volume left in the chamber at the end of delivery.</summary>
    public Volume? ChamberVolume { get; init; }

    /// <summary>Part of the displacement that is filled when healthy, 0 to 1.</summary>
    public double? Filling { get; init; }
}

/// <summary>Battery, motor and gearbox.</summary>
public sealed record DriveData
{
    public required double SupplyVolts { get; init; }
    public required double ResistanceOhms { get; init; }

    /// <summary>Torque and back-EMF constant, N·m/A = V·s/rad.</summary>
    public required double TorqueConstant { get; init; }

    public Torque? FrictionTorque { get; init; }

    /// <summary>Inertia at the motor, kg·m².</summary>
    public double? InertiaKilogramSquareMetres { get; init; }

    /// <summary>Motor turns per pump turn.</summary>
    public required double GearRatio { get; init; }

    /// <summary>Gearbox efficiency, 0 to 1.</summary>
    public double GearEfficiency { get; init; } = 1;

    public double? CurrentLimitAmperes { get; init; }
}

/// <summary>The relief valve: a spring-loaded poppet on a seat, set by a screw.</summary>
public sealed record ReliefData
{
    /// <summary>Diameter on which the poppet seals.</summary>
    public required Length ContactDiameter { get; init; }

    /// <summary>Relative standard uncertainty of the contact diameter, such as 0.06; null takes the advisor's own.</summary>
    public double? ContactDiameterSpread { get; init; }

    /// <summary>Diameter of the stem through the seat; null or zero for a plain poppet.</summary>
    public Length? StemDiameter { get; init; }

    public required Stiffness SpringRate { get; init; }

    /// <summary>Advance of the screw per turn.</summary>
    public required Length Pitch { get; init; }

    /// <summary>Whether turning the screw clockwise raises the pressure.</summary>
    public required bool ClockwiseRaises { get; init; }

    /// <summary>Closing over opening pressure, a ratio of areas.</summary>
    public double? ClosingRatio { get; init; }

    /// <summary>Lowest and highest pressure that the screw can reach.</summary>
    public PressureWindow? Reach { get; init; }
}

/// <summary>Data of the oil as the stroke model needs them.</summary>
public sealed record OilData
{
    /// <summary>Adiabatic tangent bulk modulus of air-free oil at zero pressure.</summary>
    public required Pressure BulkModulus { get; init; }

    /// <summary>dK/dp.</summary>
    public required double BulkModulusSlope { get; init; }

    public required double DensityKilogramsPerCubicMetre { get; init; }

    /// <summary>Free air at atmospheric pressure as a volume fraction when healthy.</summary>
    public double? Air { get; init; }

    /// <summary>Oil that the reservoir can give.</summary>
    public Volume? Usable { get; init; }
}
