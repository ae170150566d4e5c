using Ramwright.Metrology.Quantities;

namespace Ramwright.Records.Events;

/// <summary>What a reading is of.</summary>
public enum ReadingKind { Pressure, Force, Torque, Length, Angle, Volume, Temperature, Time, Current, Voltage, Count }

/// <summary>A figure that was read or measured, of any kind, held in the coherent SI unit of its kind (A, V, s; a count is 1).</summary>
public readonly record struct Reading
{
    public Reading(ReadingKind kind, double si)
    {
        Kind = kind;
        Si = double.IsFinite(si) ? si : throw new ArgumentOutOfRangeException(nameof(si), si, "A reading is a finite number.");
    }

    public ReadingKind Kind { get; }

    /// <summary>The value in the coherent SI unit of <see cref="Kind"/>.</summary>
    public double Si { get; }

    public Pressure? AsPressure => Kind == ReadingKind.Pressure ? Pressure.FromSi(Si) : null;
    public Force? AsForce => Kind == ReadingKind.Force ? Force.FromSi(Si) : null;
    public Torque? AsTorque => Kind == ReadingKind.Torque ? Torque.FromSi(Si) : null;
    public Length? AsLength => Kind == ReadingKind.Length ? Length.FromSi(Si) : null;

    public static Reading Of(Pressure value) => new(ReadingKind.Pressure, value.Si);

    public static Reading Of(Force value) => new(ReadingKind.Force, value.Si);

    public static Reading Of(Torque value) => new(ReadingKind.Torque, value.Si);

    public static Reading Of(Length value) => new(ReadingKind.Length, value.Si);

    public static Reading Of(Angle value) => new(ReadingKind.Angle, value.Si);

    public static Reading Of(Volume value) => new(ReadingKind.Volume, value.Si);

    public static Reading Of(Temperature value) => new(ReadingKind.Temperature, value.Si);

    public static Reading Of(TimeSpan value) => new(ReadingKind.Time, value.TotalSeconds);
}
