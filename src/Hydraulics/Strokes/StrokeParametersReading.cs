using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>The parameters that a service model gives, or what it lacks for them.</summary>
public abstract record StrokeParametersReading
{
    /// <summary>Healthy check valves, clearance and seals all but hold: m³/s per pascal, as the invented reference tool of the test recordings.</summary>
    private const double TightDelivery = 2e-17, TightInlet = 2e-17, TightPiston = 3e-17, TightBypass = 4e-17;

    private StrokeParametersReading() { } // closed: these two answers and no others

    /// <param name="Tool">The tool, sound.</param>
    /// <param name="Assumed">What the model does not say and was taken instead, one phrase each.</param>
    public sealed record Ready(StrokeParameters Tool, ImmutableArray<string> Assumed) : StrokeParametersReading;

    /// <param name="Facts">Keys that are missing, such as <c>behaviour.drive</c>.</param>
    public sealed record Missing(ImmutableArray<string> Facts) : StrokeParametersReading;

    /// <summary>Reads level 3 of a model. Facts that only sharpen are assumed and said so.</summary>
    public static StrokeParametersReading Of(ServiceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var behaviour = model.Behaviour ?? new Behaviour();
        ImmutableArray<string> missing =
        [
            .. behaviour.Ram is null ? ["behaviour.ram"] : RamLacks(behaviour.Ram),
            .. behaviour.Pump is null ? ["behaviour.pump"] : (string[])[],
            .. behaviour.Drive is null ? ["behaviour.drive"] : (string[])[],
            .. behaviour.Oil is null ? ["behaviour.oil"] : (string[])[],
        ];
        return missing.IsEmpty
            ? Read(model, behaviour.Ram!, behaviour.Pump!, behaviour.Drive!, behaviour.Oil!)
            : new Missing(missing);
    }

    private static string[] RamLacks(RamData ram) =>
        [.. ram.SpringPreload is null ? ["behaviour.ram.spring-preload"] : (string[])[], .. ram.SpringRate is null ? ["behaviour.ram.spring-rate"] : (string[])[]];

    private static Ready Read(ServiceModel model, RamData ram, PumpData pump, DriveData drive, OilData oil)
    {
        var assumed = ImmutableArray.CreateBuilder<string>();
        T Or<T>(T? given, T otherwise, string words)
            where T : struct
        {
            if (given is { } value)
                return value;
            assumed.Add(words);
            return otherwise;
        }

        var relief = model.Behaviour!.Relief;
        var radius = 0.5 * ram.Diameter.Metres;
        var displacement = pump.DisplacementPerTurn.CubicMetres;
        var tool = new StrokeParameters
        {
            SupplyVolts = drive.SupplyVolts,
            ResistanceOhms = drive.ResistanceOhms,
            TorqueConstant = drive.TorqueConstant,
            MotorFrictionNewtonMetres = Or(drive.FrictionTorque?.NewtonMetres, 0.018, "friction at the motor 0.018 N·m"),
            Inertia = Or(drive.InertiaKilogramSquareMetres, 3e-5, "inertia at the motor 3e-5 kg·m²"),
            GearRatio = drive.GearRatio,
            GearEfficiency = drive.GearEfficiency,
            CurrentLimitAmperes = drive.CurrentLimitAmperes ?? double.PositiveInfinity,
            DisplacementCubicMetres = displacement,
            ChamberCubicMetres = Or(pump.ChamberVolume?.CubicMetres, 0.4 * displacement, "pump chamber 40 % of the displacement"),
            Filling = Or(pump.Filling, 0.95, "pump filled to 95 %"),
            Inlet = pump.Inlet,
            DeliveryLeak = TightDelivery,
            InletLeak = pump.Inlet == InletKind.Port ? 0 : TightInlet,
            PistonLeak = TightPiston,
            BypassLeak = TightBypass,
            UsableOilCubicMetres = Or(oil.Usable?.CubicMetres, 1, "oil enough in the reservoir"),
            Oil = new(oil.BulkModulus.Pascals, oil.BulkModulusSlope, Or(oil.Air, 0.004, "0.4 % air in the oil"), 1.4),
            Density = oil.DensityKilogramsPerCubicMetre,
            DeadCubicMetres = ram.DeadVolume.CubicMetres,
            RamSquareMetres = Math.PI * radius * radius,
            StrokeMetres = ram.Stroke.Metres,
            MassKilograms = Or(ram.MovingMass?.Kilograms, 0.6, "moving mass 0.6 kg"),
            ViscousFriction = Or(ram.ViscousNewtonSecondsPerMetre, 2500, "viscous friction 2,500 N·s/m"),
            DryFrictionNewtons = Or(ram.DryFriction?.Newtons, 150, "dry friction 150 N"),
            SealFrictionShare = Or(ram.SealFrictionShare, 0.01, "seal friction 1 %"),
            SpringPreloadNewtons = ram.SpringPreload!.Value.Newtons,
            SpringNewtonsPerMetre = ram.SpringRate!.Value.NewtonsPerMetre,
            FrameNewtonsPerMetre = Or(model.Behaviour.FrameStiffness?.NewtonsPerMetre, 2e8, "frame stiffness 200 kN/mm"),
            ReliefPascals = model.Limits.Nominal.Pascals,
            ClosingRatio = Or(relief?.ClosingRatio, 1.0 / 85, "relief closes at 1/85 of its opening pressure"),
            ReliefOpenSquareMetres = ReliefArea(relief),
            ReliefDelaySeconds = 6e-4,
            ReliefSeconds = 1e-3,
            SensorSeconds = Math.Max(1e-5, Or(model.Behaviour.SensorResponse, TimeSpan.FromMilliseconds(1), "sensor response 1 ms").TotalSeconds),
            StopDelaySeconds = 0.05,
        };
        assumed.Add("relief opens 0.6 ms late and with a time constant of 1 ms; the motor is switched off after 50 ms");
        return new(tool, assumed.ToImmutable());
    }

    /// <summary>Open area times discharge coefficient, m²: 0.18 of the seat's ring, which brings the invented reference tool's ram home in the recorded time.</summary>
    private static double ReliefArea(ReliefData? relief)
    {
        var (contact, stem) = (relief?.ContactDiameter ?? Length.FromMetres(2.6e-3), relief?.StemDiameter ?? Length.FromMetres(relief is null ? 1.2e-3 : 0));
        return 0.18 * 0.25 * Math.PI * (contact.Metres * contact.Metres - stem.Metres * stem.Metres);
    }
}
