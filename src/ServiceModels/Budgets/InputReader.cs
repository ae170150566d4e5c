using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>Reads one input: its value with its unit, and the parts of its uncertainty.</summary>
internal sealed class InputReader(MistakeList mistakes)
{
    private const string Example = "{ value: 700 bar, parts: { gauge: { rectangular: 2 bar, effect: systematic } } }";

    public InputRead Read(YamlEntry entry)
    {
        var none = new InputRead(entry.Key, entry.At, null, null);
        if (Expression.Read(entry.Key, [entry.Key]) is not TextReading<Expression>.Good { Value.Steps: [{ Do: Operation.Input }] })
            mistakes.Add(entry.At, $"'{entry.Key}' cannot stand in a formula", "write a name of letters, digits and _ that begins with a letter, such as p or A_ram", "bad-id");
        if (Group.Open(entry.Value, mistakes, "an input", Example, ["value", "parts"]) is not { } group)
            return none;
        var valueAt = group.Find("value") is { } v ? group.Single(v.Value, "700 bar") : null;
        var value = valueAt is null ? null : ReadValue(group, valueAt);
        if (group.Find("value") is not null && value is null)
            return none;
        var unit = value is { } known ? known.Unit : UnitOfReadings(group);
        var parts = ReadParts(group, unit, value?.Si);
        var estimate = value?.Si ?? (parts is null ? null : parts.Select(p => p.Mean).OfType<double>().Cast<double?>().FirstOrDefault());
        if (estimate is null && parts is not null)
            _ = group.Need("value", "its best estimate, with the unit", "700 bar");
        return estimate is { } si && parts is not null ? new(entry.Key, entry.At, unit, new(entry.Key, si, [.. parts.Select(p => p.Component)])) : none with { Unit = unit };
    }

    private List<(Component Component, double? Mean)>? ReadParts(Group group, Unit? unit, double? value)
    {
        var read = new List<(Component, double?)>();
        if (group.Find("parts") is not { } entry)
            return read;
        if (Group.Open(entry.Value, mistakes, "parts", "gauge: { rectangular: 2 bar, effect: systematic }", known: null) is not { } parts)
            return null;
        var reader = new ComponentReader(mistakes, unit, value);
        var whole = true;
        foreach (var part in parts.Entries.Take(Budget.MostComponents + 1))
        {
            if (reader.Read(part) is { } component)
                read.Add(component);
            else
                whole = false;
        }

        return whole ? read : null;
    }

    private static (double Si, Unit? Unit)? ReadValue(Group group, YamlScalar scalar)
    {
        if (scalar.Text.TrimEnd().EndsWith('%'))
            return group.Take(scalar, QuantityReader.ReadShare(scalar.Text)) is { } share ? (share, null) : null;
        if (group.Take(scalar, QuantityReader.ReadAny(scalar.Text)) is not var (number, unit))
            return null;
        var si = unit?.ToSi(number) ?? number;
        if (double.IsFinite(si))
            return (si, unit);
        group.Add(scalar.At, $"{scalar.Text} is larger than any quantity can be", "write the value that is meant", "out-of-range");
        return null;
    }

    /// <summary>The unit of the first reading, for an input whose value is the mean of its readings.</summary>
    private static Unit? UnitOfReadings(Group group)
    {
        var first = group.Find("parts")?.Value is YamlMapping parts
            ? parts.Entries.Select(p => p.Value).OfType<YamlMapping>().Select(p => p.Find("readings")?.Value).OfType<YamlSequence>().SelectMany(s => s.Items).OfType<YamlScalar>().FirstOrDefault()
            : null;
        return first is not null && QuantityReader.ReadAny(first.Text) is TextReading<(double Number, Unit? Unit)>.Good(var good) ? good.Unit : null;
    }
}
