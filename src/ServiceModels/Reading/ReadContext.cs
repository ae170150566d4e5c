using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Reading;

/// <summary>What forms write to while they read: the mistakes and the names.</summary>
internal sealed record ReadContext(MistakeList Mistakes, NameBook Names)
{
    public void Add(Place at, string what, string mend, string code) => Mistakes.Add(at, what, mend, code);

    /// <summary>Takes a reading of a scalar's text; a fault is put at its characters in the file.</summary>
    public object? Take<T>(YamlScalar scalar, TextReading<T> reading)
    {
        if (reading is TextReading<T>.Bad { Fault: var fault })
        {
            Add(scalar.PlaceOf(fault.Start, Math.Min(fault.Length, Math.Max(1, scalar.Text.Length))), fault.What, fault.Mend, fault.Code);
            return null;
        }

        return ((TextReading<T>.Good)reading).Value;
    }
}
