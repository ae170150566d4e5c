using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>All that the stroke model knows of a tool, in SI units. From a service model by <see cref="StrokeParametersReading.Of"/>; a fault is a change of some of them.</summary>
public sealed record StrokeParameters
{
    public required double SupplyVolts { get; init; }

    /// <summary>Battery, leads and winding together.</summary>
    public required double ResistanceOhms { get; init; }

    /// <summary>N·m/A, the same figure in V·s/rad.</summary>
    public required double TorqueConstant { get; init; }

    /// <summary>Friction at the motor shaft without load.</summary>
    public required double MotorFrictionNewtonMetres { get; init; }

    /// <summary>Inertia at the motor shaft, kg·m².</summary>
    public required double Inertia { get; init; }

    /// <summary>Motor turns per pump turn.</summary>
    public required double GearRatio { get; init; }

    /// <summary>Share of the torque that gets through, above 0 to 1.</summary>
    public required double GearEfficiency { get; init; }

    /// <summary>Current at which the electronics limit; infinite when they do not.</summary>
    public required double CurrentLimitAmperes { get; init; }

    /// <summary>Displaced in one pump turn.</summary>
    public required double DisplacementCubicMetres { get; init; }

    /// <summary>Left in the chamber at the end of delivery.</summary>
    public required double ChamberCubicMetres { get; init; }

    /// <summary>Share of the displacement that is filled with oil, 0 to 1; air drawn in with it counts as not filled.</summary>
    public required double Filling { get; init; }

    public required InletKind Inlet { get; init; }

    /// <summary>Leak back through the delivery check, m³/s per pascal.</summary>
    public required double DeliveryLeak { get; init; }

    /// <summary>Leak back through the inlet check, m³/s per pascal; nothing with an inlet port.</summary>
    public required double InletLeak { get; init; }

    /// <summary>Leak through the clearance of the pump piston, m³/s per pascal.</summary>
    public required double PistonLeak { get; init; }

    /// <summary>Leak past the ram seal or the relief seat, always, m³/s per pascal.</summary>
    public required double BypassLeak { get; init; }

    /// <summary>Leak of a weeping relief above a share of its set pressure, m³/s per pascal above it.</summary>
    public double WeepLeak { get; init; }

    /// <summary>Share of the set pressure from which a weeping relief lets oil through, 0 to 1.</summary>
    public double WeepFromShare { get; init; } = 0.6;

    /// <summary>Oil that the reservoir can give.</summary>
    public required double UsableOilCubicMetres { get; init; }

    public required OilWithAir Oil { get; init; }

    /// <summary>Density in kg/m³.</summary>
    public required double Density { get; init; }

    /// <summary>Oil on the high-pressure side with the ram home.</summary>
    public required double DeadCubicMetres { get; init; }

    public required double RamSquareMetres { get; init; }

    /// <summary>Stroke until the dies are closed.</summary>
    public required double StrokeMetres { get; init; }

    public required double MassKilograms { get; init; }

    /// <summary>Friction by speed, N·s/m.</summary>
    public required double ViscousFriction { get; init; }

    public required double DryFrictionNewtons { get; init; }

    /// <summary>Seal friction as a share of pressure × ram area.</summary>
    public required double SealFrictionShare { get; init; }

    public required double SpringPreloadNewtons { get; init; }

    public required double SpringNewtonsPerMetre { get; init; }

    /// <summary>Head and frame once the dies are closed.</summary>
    public required double FrameNewtonsPerMetre { get; init; }

    /// <summary>Gauge pressure at which the relief opens.</summary>
    public required double ReliefPascals { get; init; }

    /// <summary>Closing over opening pressure, a ratio of areas, 0 to below 1.</summary>
    public required double ClosingRatio { get; init; }

    /// <summary>Area of the open relief times its discharge coefficient.</summary>
    public required double ReliefOpenSquareMetres { get; init; }

    /// <summary>From reaching the opening pressure until the poppet leaves its seat: makes the peak, rate of rise × delay.</summary>
    public required double ReliefDelaySeconds { get; init; }

    /// <summary>Time constant with which the relief then opens, and closes.</summary>
    public required double ReliefSeconds { get; init; }

    /// <summary>Time constant of the pressure sensor, a first-order lag; above 0.</summary>
    public required double SensorSeconds { get; init; }

    /// <summary>From the opening of the relief until the electronics switch the motor off.</summary>
    public required double StopDelaySeconds { get; init; }

    /// <summary>Speed in rad/s above which the electronics no longer limit the current; negative when they never do.</summary>
    internal double LimitEndsRadiansPerSecond => double.IsFinite(CurrentLimitAmperes) ? (SupplyVolts - ResistanceOhms * CurrentLimitAmperes) / TorqueConstant : -1;

    internal double StallAmperes => Math.Min(CurrentLimitAmperes, SupplyVolts / ResistanceOhms);

    internal double FilledCubicMetres => Filling * DisplacementCubicMetres;

    /// <summary>Leak back while the pump stands, m³/s per pascal: the delivery check in series with inlet check and clearance; with a port it stands alone.</summary>
    internal double StandingLeak
    {
        get
        {
            var behind = InletLeak + PistonLeak;
            return Inlet == InletKind.Port ? DeliveryLeak : DeliveryLeak + behind > 0 ? DeliveryLeak * behind / (DeliveryLeak + behind) : 0;
        }
    }
}
