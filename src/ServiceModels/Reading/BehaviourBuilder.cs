using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds the behaviour; a group that lacks a required value is left out, its mistake stands.</summary>
internal static class BehaviourBuilder
{
    public static Behaviour BehaviourOf(Facts facts) => new()
    {
        Ram = facts.Section("ram") is { } ram ? RamOf(ram) : null,
        Pump = facts.Section("pump") is { } pump ? PumpOf(pump) : null,
        Drive = facts.Section("drive") is { } drive ? DriveOf(drive) : null,
        Relief = facts.Section("relief") is { } relief ? ReliefOf(relief) : null,
        Oil = facts.Section("oil") is { } oil ? OilOf(oil) : null,
        FrameStiffness = facts.Quantity<Stiffness>("frame-stiffness"),
        SensorResponse = facts.Seconds("sensor-response"),
        MemoryDepth = facts.Value<int>("memory-depth"),
    };

    private static RamData? RamOf(Facts f) => f.Quantity<Length>("diameter") is { } diameter && f.Quantity<Length>("stroke") is { } stroke && f.Quantity<Volume>("dead-volume") is { } dead
        ? new(diameter, stroke, dead)
        {
            MovingMass = f.Quantity<Mass>("moving-mass"),
            SpringPreload = f.Quantity<Force>("spring-preload"),
            SpringRate = f.Quantity<Stiffness>("spring-rate"),
            DryFriction = f.Quantity<Force>("dry-friction"),
            SealFrictionShare = f.Value<double>("seal-friction"),
            ViscousNewtonSecondsPerMetre = f.Value<double>("viscous-friction"),
        }
        : null;

    private static PumpData? PumpOf(Facts f) => f.Quantity<Volume>("displacement") is { } displacement && f.Value<InletKind>("inlet") is { } inlet
        ? new(displacement, inlet) { ChamberVolume = f.Quantity<Volume>("chamber"), Filling = f.Value<double>("filling") }
        : null;

    private static DriveData? DriveOf(Facts f) => f.Value<double>("supply") is { } supply && f.Value<double>("resistance") is { } resistance
        && f.Value<double>("torque-constant") is { } constant && f.Value<double>("gear-ratio") is { } ratio
        ? new()
        {
            SupplyVolts = supply,
            ResistanceOhms = resistance,
            TorqueConstant = constant,
            FrictionTorque = f.Quantity<Torque>("friction-torque"),
            InertiaKilogramSquareMetres = f.Value<double>("inertia"),
            GearRatio = ratio,
            GearEfficiency = f.Value<double>("gear-efficiency") ?? 1,
            CurrentLimitAmperes = f.Value<double>("current-limit"),
        }
        : null;

    private static ReliefData? ReliefOf(Facts f) => f.Quantity<Length>("contact-diameter") is { } contact && f.Quantity<Stiffness>("spring-rate") is { } rate
        && f.Quantity<Length>("pitch") is { } pitch && f.Value<Clockwise>("clockwise") is { } clockwise
        ? new()
        {
            ContactDiameter = contact,
            ContactDiameterSpread = f.Value<double>("contact-diameter-spread"),
            StemDiameter = f.Quantity<Length>("stem-diameter"),
            SpringRate = rate,
            Pitch = pitch,
            ClockwiseRaises = clockwise == Clockwise.Raises,
            ClosingRatio = f.Value<double>("closing-ratio"),
            Reach = f.Value<PressureWindow>("reach"),
        }
        : null;

    private static OilData? OilOf(Facts f) => f.Quantity<Pressure>("bulk-modulus") is { } modulus && f.Value<double>("bulk-modulus-slope") is { } slope && f.Value<double>("density") is { } density
        ? new()
        {
            BulkModulus = modulus,
            BulkModulusSlope = slope,
            DensityKilogramsPerCubicMetre = density,
            Air = f.Value<double>("air"),
            Usable = f.Quantity<Volume>("usable"),
        }
        : null;
}
