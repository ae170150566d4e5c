namespace Ramwright.Metrology.Input;

/// <summary>What kind of quantity a text is about; each has one coherent SI unit (see <see cref="UnitTable"/>).</summary>
public enum Dimension
{
    /// <summary>Metre.</summary>
    Length,

    /// <summary>Cubic metre.</summary>
    Volume,

    /// <summary>Kilogram.</summary>
    Mass,

    /// <summary>Second.</summary>
    Time,

    /// <summary>Newton.</summary>
    Force,

    /// <summary>Pascal, gauge.</summary>
    Pressure,

    /// <summary>Newton metre.</summary>
    Torque,

    /// <summary>Newton per metre.</summary>
    Stiffness,

    /// <summary>Radian.</summary>
    Angle,

    /// <summary>Kelvin.</summary>
    Temperature,

    /// <summary>Volt.</summary>
    Voltage,

    /// <summary>Ohm.</summary>
    Resistance,

    /// <summary>Ampere.</summary>
    Current,

    /// <summary>Newton metre per ampere, which is volt second per radian.</summary>
    TorqueConstant,

    /// <summary>Kilogram square metre.</summary>
    Inertia,

    /// <summary>Newton second per metre.</summary>
    ViscousFriction,

    /// <summary>Kilogram per cubic metre.</summary>
    Density,

    /// <summary>Square metre per second.</summary>
    KinematicViscosity,

    /// <summary>Square metre.</summary>
    Area,

    /// <summary>One per kelvin.</summary>
    Expansion,
}
