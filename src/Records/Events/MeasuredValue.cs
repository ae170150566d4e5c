using Ramwright.Metrology.Quantities;

namespace Ramwright.Records.Events;

/// <summary>What a reading is of.</summary>
public enum MeasuredKind { Pressure, Force, Torque, Length, Angle, Volume, Temperature, Time, Current, Voltage, Count }

/// <summary>A figure that was read or measured, of any kind, held in the coherent SI unit of its kind (A, V, s; a count is 1).</summary>
public readonly record struct MeasuredValue
{
    public MeasuredValue(MeasuredKind kind, double si)
    {
        Kind = kind;
        Si = double.IsFinite(si) ? si : throw new ArgumentOutOfRangeException(nameof(si), si, "A reading is a finite number.");
    }

    public MeasuredKind Kind { get; }

    /// <summary>The value in the coherent SI unit of <see cref="Kind"/>.</summary>
    public double Si { get; }

    public Pressure? AsPressure => Kind == MeasuredKind.Pressure ? Pressure.FromSi(Si) : null;
    public Force? AsForce => Kind == MeasuredKind.Force ? Force.FromSi(Si) : null;
    public Torque? AsTorque => Kind == MeasuredKind.Torque ? Torque.FromSi(Si) : null;
    public Length? AsLength => Kind == MeasuredKind.Length ? Length.FromSi(Si) : null;

    public static MeasuredValue Of(Pressure value) => new(MeasuredKind.Pressure, value.Si);

    public static MeasuredValue Of(Force value) => new(MeasuredKind.Force, value.Si);

    public static MeasuredValue Of(Torque value) => new(MeasuredKind.Torque, value.Si);

    public static MeasuredValue Of(Length value) => new(MeasuredKind.Length, value.Si);

    public static MeasuredValue Of(Angle value) => new(MeasuredKind.Angle, value.Si);

    public static MeasuredValue Of(Volume value) => new(MeasuredKind.Volume, value.Si);

    public static MeasuredValue Of(Temperature value) => new(MeasuredKind.Temperature, value.Si);

    public static MeasuredValue Of(TimeSpan value) => new(MeasuredKind.Time, value.TotalSeconds);
}
