using Ramwright.Metrology.Input;
using Ramwright.Metrology.Screens;
using Ramwright.Metrology.Uncertainty;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>Reads one reason why an input may be off: a shape with its size, an effect, degrees of freedom.</summary>
/// <param name="mistakes">Where mistakes go.</param>
/// <param name="unit">The input's unit, null for a plain number.</param>
/// <param name="value">The input's estimate in SI where it is known, for sizes in per cent of it.</param>
internal sealed class ComponentReader(MistakeList mistakes, Unit? unit, double? value)
{
    private static readonly string[] Shapes = ["normal", "expanded", "rectangular", "triangular", "u-shaped", "readings"];
    private static readonly string[] Keys = [.. Shapes, "k", "dof", "effect"];

    /// <summary>The component, or null after the mistake was reported; the mean of its readings in SI where it has some.</summary>
    public (Component Component, double? Mean)? Read(YamlEntry entry)
    {
        if (Group.Open(entry.Value, mistakes, "a part of the uncertainty", "{ rectangular: 0.5 bar, effect: systematic }", Keys) is not { } group)
            return null;
        var effect = group.Word(group.Single(group.Need("effect", "whether it is the same in every run or new in each", "systematic"), "systematic"), "effect", ("systematic", Effect.Systematic), ("random", Effect.Random));
        var shapes = group.Entries.Where(e => Shapes.Contains(e.Key, StringComparer.Ordinal)).ToList();
        var df = DegreesOfFreedom(group);
        if (shapes is not [var shape])
        {
            group.Add(shapes.Count == 0 ? group.At : shapes[1].At, shapes.Count == 0 ? $"'{entry.Key}' says no size" : $"'{entry.Key}' has {shapes.Count} shapes; one is wanted",
                $"write one of {string.Join(", ", Shapes)} with its size; parts with different shapes stand under names of their own", "one-shape");
            return null;
        }

        if (group.Find("k") is { } k && shape.Key != "expanded")
            group.Add(k.At, $"k belongs to an expanded uncertainty, and '{entry.Key}' is {shape.Key}", "take k away, or write expanded instead", "one-shape");
        if (shape.Key == "readings")
            return Readings(group, entry, shape, effect, df);
        var spread = SpreadOf(group, shape);
        return spread is not null && effect is { } e && df is { } v ? (new Component(entry.Key, spread, e, v), null) : null;
    }

    private Spread? SpreadOf(Group group, YamlEntry shape)
    {
        var k = shape.Key == "expanded" ? Factor(group) : 1;
        if (group.Single(shape.Value, unit is null ? "0.5" : $"0.5 {unit.Symbol}") is not { } scalar || Size(group, scalar) is not { } size || k is not { } factor)
            return null;
        return shape.Key switch
        {
            "normal" => new Spread.Normal(size),
            "expanded" => new Spread.Expanded(size, factor),
            "rectangular" => new Spread.Rectangular(size),
            "triangular" => new Spread.Triangular(size),
            _ => new Spread.UShaped(size),
        };
    }

    private (Component, double?)? Readings(Group group, YamlEntry entry, YamlEntry shape, Effect? effect, double? df)
    {
        if (shape.Value is not YamlSequence { Items.Count: >= 2 } list)
        {
            group.Add(shape.At, "two readings or more are wanted here", "write them as a list, such as [700.2 bar, 699.6 bar, 700.9 bar]", "wrong-form");
            return null;
        }

        if (group.Find("dof") is { } dof)
            group.Add(dof.At, "degrees of freedom follow from the number of readings", "take dof away", "unknown-key");
        var readings = new List<double>();
        foreach (var item in list.Items)
            if (group.Single(item, unit is null ? "1.02" : $"700.2 {unit.Symbol}") is { } scalar && Quantity(group, scalar, difference: false) is { } reading)
                readings.Add(reading);
        if (readings.Count < list.Items.Count || effect is not { } e || df is null)
            return null;
        var component = Component.OfReadings(entry.Key, [.. readings]);
        return (new(component.Name, component.Spread, e, component.DegreesOfFreedom), Moments.Of([.. readings]).Mean);
    }

    private static double? DegreesOfFreedom(Group group)
    {
        if (group.Find("dof") is not { } dof)
            return double.PositiveInfinity;
        if (group.Single(dof.Value, "9") is not { } scalar || group.Take(scalar, QuantityReader.ReadPlain(scalar.Text)) is not { } df)
            return null;
        if (df is >= Component.LeastDegreesOfFreedom and <= 1e9)
            return df;
        group.Add(scalar.At, $"{scalar.Text} degrees of freedom tell nothing of a spread", "write 0.5 or more, such as one less than the number of readings; leave dof out when the spread is taken as known", "out-of-range");
        return null;
    }

    private static double? Factor(Group group)
    {
        if (group.Single(group.Need("k", "the coverage factor that the certificate states", "2"), "2") is not { } scalar || group.Take(scalar, QuantityReader.ReadPlain(scalar.Text)) is not { } k)
            return null;
        if (k is > 0 and <= 100)
            return k;
        group.Add(scalar.At, $"a coverage factor of {scalar.Text} cannot be", "write what the certificate states, mostly 2", "out-of-range");
        return null;
    }

    /// <summary>A size in SI, zero or more: with the input's unit, or in per cent of its value.</summary>
    private double? Size(Group group, YamlScalar scalar)
    {
        double? size;
        if (!scalar.Text.TrimEnd().EndsWith('%'))
            size = Quantity(group, scalar, difference: true);
        else if (value is null)
        {
            group.Add(scalar.At, $"{scalar.Text} of what: the input states no value", "write the input's value, or the size with its unit", "missing-key");
            return null;
        }
        else if (value == 0)
        {
            group.Add(scalar.At, $"{scalar.Text} of a value of zero is nothing", "write the size with its unit", "out-of-range");
            return null;
        }
        else
            size = group.Take(scalar, QuantityReader.ReadShare(scalar.Text)) * Math.Abs(value.Value);
        if (size is not < 0)
            return size;
        group.Add(scalar.At, $"an uncertainty of {scalar.Text} is below zero", "write its size without a sign", "negative-uncertainty");
        return null;
    }

    /// <summary>A quantity of the input's kind in SI; a difference has no zero point, so that 0.5 °C is 0.5 K.</summary>
    private double? Quantity(Group group, YamlScalar scalar, bool difference)
    {
        if (unit is null)
            return group.Take(scalar, QuantityReader.ReadPlain(scalar.Text));
        if (group.Take(scalar, QuantityReader.Read(scalar.Text, unit.Dimension)) is null || QuantityReader.ReadAny(scalar.Text) is not TextReading<(double Number, Unit? Unit)>.Good { Value: var (number, own) })
            return null;
        return difference ? number * own!.Factor : own!.ToSi(number);
    }
}
