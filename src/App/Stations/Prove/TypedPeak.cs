using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;

namespace Ramwright.App.Stations.Prove;

/// <summary>A peak as somebody reads it off a reference: a pressure, or the force of a force cell.</summary>
public static class TypedPeak
{
    /// <param name="unit">That of the device, unless one is typed.</param>
    /// <param name="conversion">How a force becomes a pressure; null where the device reads no force.</param>
    /// <returns>Null with the mistake noted.</returns>
    public static Pressure? Read(string? text, string unit, ReadingCorrection? conversion, FormMistakes mistakes)
    {
        if (Figures.Read(text, unit, "peak", mistakes) is not { } reading)
            return null;
        var pressure = reading.AsForce is { } force ? conversion?.Equivalent(force) : reading.AsPressure;
        if (pressure is { Bar: > 0 and < 5000 })
            return pressure;
        mistakes.Add("peak", reading.AsForce is not null && conversion?.RamArea is null ? "A force was written, and what reads this series shows pressures." : "That is no peak that such a tool can have.", "Write what the device shows, with its unit where it is another than the one beside the field.");
        return null;
    }
}
