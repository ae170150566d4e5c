using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Level 3: what the stroke model and the relief advisor need.</summary>
internal static class BehaviourKeys
{
    public static Section Ram { get; } = new("the ram", "The ram and its return spring.", 3,
    [
        new("diameter", Values.Length, "diameter on which pressure acts", "39.3 mm") { Required = true },
        new("stroke", Values.Length, "full stroke", "20 mm") { Required = true },
        new("dead-volume", Values.VolumeOrZero, "oil in the high-pressure side with the ram at rest", "5 cm³") { Required = true },
        new("moving-mass", Values.Mass, "mass that moves with the ram", "0.6 kg"),
        new("spring-preload", Values.Force, "force of the return spring at rest", "1450 N"),
        new("spring-rate", Values.Stiffness, "rate of the return spring", "12 N/mm"),
        new("dry-friction", Values.Force, "friction that does not depend on pressure", "150 N"),
        new("seal-friction", Values.Share, "seal friction growing with pressure, as a share of pressure × area", "1 %"),
        new("viscous-friction", new QuantityForm(Dimension.ViscousFriction, 0, 1e7), "friction per speed", "2500 N·s/m"),
    ]);

    public static Section Pump { get; } = new("the pump", "The piston pump.", 3,
    [
        new("displacement", Values.Volume, "volume displaced in one turn", "0.14 cm³") { Required = true },
        new("inlet", Values.Word<InletKind>("kind of inlet"), "how the pump takes oil in: through a check valve, or a port that the piston uncovers", "check") { Required = true },
        new("chamber", Values.VolumeOrZero, "volume left in the chamber at the end of delivery", "0.06 cm³"),
        new("filling", Values.Share, "part of the displacement that is filled when healthy", "95 %"),
    ]);

    public static Section Drive { get; } = new("the drive", "Battery, motor and gearbox.", 3,
    [
        new("supply", Values.Above(Dimension.Voltage, 0, 400), "voltage of the charged battery at rest", "18 V") { Required = true },
        new("resistance", Values.Above(Dimension.Resistance, 0, 100), "resistance of battery, leads and winding together", "45 mΩ") { Required = true },
        new("torque-constant", Values.Above(Dimension.TorqueConstant, 0, 10), "torque per current; in V·s/rad the same figure", "0.009 N·m/A") { Required = true },
        new("friction-torque", Values.TorqueOrZero, "friction at the motor shaft", "0.018 N·m"),
        new("inertia", new QuantityForm(Dimension.Inertia, 0, 10), "inertia at the motor shaft", "3e-5 kg·m²"),
        new("gear-ratio", Values.Number(0.1, 1000), "motor turns for a pump turn", "7") { Required = true },
        new("gear-efficiency", Values.Share, "efficiency of the gearbox", "85 %") { Default = "100 %" },
        new("current-limit", Values.Above(Dimension.Current, 0, 1000), "current at which the electronics limit", "110 A"),
    ]);

    public static Section Relief { get; } = new("the relief valve", "A spring-loaded poppet on a seat, set by a screw.", 3,
    [
        new("contact-diameter", Values.Length, "diameter on which the poppet seals", "3.2 mm") { Required = true },
        new("contact-diameter-spread", Values.Share, "relative standard uncertainty of that diameter", "6 %") { Default = "the advisor's own" },
        new("stem-diameter", Values.LengthOrZero, "diameter of a stem through the seat", "1.5 mm") { Default = "no stem" },
        new("spring-rate", Values.Stiffness, "rate of its spring", "60 N/mm") { Required = true },
        new("pitch", Values.Length, "advance of the screw in one turn", "1 mm") { Required = true },
        new("clockwise", Values.Word<Clockwise>("direction"), "what turning the screw clockwise does to the pressure", "raises") { Required = true },
        new("closing-ratio", Values.Share, "closing pressure over opening pressure, a ratio of areas", "0.62"),
        new("reach", Values.PressureWindow, "lowest and highest pressure that the screw can reach", "450 bar .. 820 bar"),
    ]);

    public static Section Oil { get; } = new("the oil", "Data of the oil for the stroke model.", 3,
    [
        new("bulk-modulus", Values.Above(Dimension.Pressure, 0, 1e11), "adiabatic tangent bulk modulus of air-free oil at zero pressure", "1.6 GPa") { Required = true },
        new("bulk-modulus-slope", Values.Number(0, 100), "its growth with pressure, dK/dp", "10") { Required = true },
        new("density", Values.Above(Dimension.Density, 0, 5000), "density", "870 kg/m³") { Required = true },
        new("air", Values.Share, "free air at atmospheric pressure as a share of the volume, when healthy", "0.4 %"),
        new("usable", Values.Volume, "oil that the reservoir can give", "80 cm³"),
    ]);

    public static Section Behaviour { get; } = new("the behaviour", "What the stroke model and the relief advisor need.", 3,
    [
        new("ram", Values.Group(Ram), "ram and return spring", "{ diameter: 39.3 mm, stroke: 20 mm, dead-volume: 5 cm³ }"),
        new("pump", Values.Group(Pump), "piston pump", "{ displacement: 0.14 cm³, inlet: check }"),
        new("drive", Values.Group(Drive), "battery, motor, gearbox", "{ supply: 18 V, resistance: 45 mΩ, torque-constant: 0.009 N·m/A, gear-ratio: 7 }"),
        new("relief", Values.Group(Relief), "relief valve", "{ contact-diameter: 3.2 mm, spring-rate: 60 N/mm, pitch: 1 mm, clockwise: raises }"),
        new("oil", Values.Group(Oil), "oil", "{ bulk-modulus: 1.6 GPa, bulk-modulus-slope: 10, density: 870 kg/m³ }"),
        new("frame-stiffness", Values.Stiffness, "stiffness of head and frame once the dies are closed", "190 kN/mm"),
        new("sensor-response", Values.Duration, "time constant of the tool's own pressure sensor", "1 ms"),
        new("memory-depth", new WholeNumberForm(1, 10_000), "how many last peaks the tool keeps", "6") { Default = "it keeps none" },
    ]);
}

/// <summary>What a screw turned clockwise does to the pressure.</summary>
internal enum Clockwise
{
    Raises,
    Lowers,
}
