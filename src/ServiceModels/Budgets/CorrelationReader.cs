using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>Reads which inputs move together.</summary>
internal sealed class CorrelationReader(MistakeList mistakes)
{
    private const string Example = "{ between: [a, b], coefficient: 0.5 }";
    private const int Most = 500;

    public ImmutableArray<Correlation> Read(Group root, List<InputRead> inputs)
    {
        if (root.Find("correlations") is not { } entry)
            return [];
        if (entry.Value is not YamlSequence { Items: var items })
        {
            if (entry.Value is not YamlRefused)
                root.Add(entry.At, "a list is wanted here", $"write it as a list, such as [ {Example} ]", "wrong-form");
            return [];
        }

        if (items.Count > Most)
            root.Add(entry.At, $"there are {items.Count} correlations; {Most} are taken", "leave those out that are zero", "too-many-parts");
        var read = new List<Correlation>();
        foreach (var item in items.Take(Most))
        {
            if (ReadOne(item, inputs) is not { } one)
                continue;
            if (read.Exists(c => (Math.Min(c.First, c.Second), Math.Max(c.First, c.Second)) == (Math.Min(one.First, one.Second), Math.Max(one.First, one.Second))))
                root.Add(item.At, $"{inputs[one.First].Name} and {inputs[one.Second].Name} stand here a second time", "keep one of the two", "duplicate-key");
            else
                read.Add(one);
        }

        if (!mistakes.Any && !Budget.CanBe(inputs.Count, [.. read]))
            root.Add(entry.At, "no quantities can be correlated like this: each pair may be, all together are not", "see to the signs and sizes; three that move together cannot be opposed in pairs", "correlation-impossible");
        return [.. read];
    }

    private Correlation? ReadOne(YamlNode node, List<InputRead> inputs)
    {
        if (Group.Open(node, mistakes, "a correlation", Example, ["between", "coefficient"]) is not { } group)
            return null;
        var pair = group.Need("between", "which two inputs", "[a, b]") is YamlSequence { Items: [var first, var second] } ? (Index(group, first, inputs), Index(group, second, inputs)) : (-2, -2);
        if (pair == (-2, -2) && group.Find("between") is { } between)
            group.Add(between.At, "two inputs are wanted here", "write their names, such as [a, b]", "wrong-form");
        var scalar = group.Single(group.Need("coefficient", "−1 to 1", "0.5"), "0.5");
        var r = scalar is null ? null : group.Take(scalar, QuantityReader.ReadPlain(scalar.Text));
        if (r is not null and not (>= -1 and <= 1))
            group.Add(scalar!.At, $"a correlation of {scalar.Text} cannot be", "write −1 to 1", "out-of-range");
        if (pair is not ( >= 0, >= 0) || r is not (>= -1 and <= 1))
            return null;
        if (pair.Item1 == pair.Item2)
            group.Add(group.At, $"{inputs[pair.Item1].Name} is correlated with itself", "write two different inputs", "correlation-impossible");
        else if (inputs[pair.Item1].Input is { } a && inputs[pair.Item2].Input is { } b && !Budget.OneEffect(a, b))
            group.Add(group.At, $"{a.Name} and {b.Name} hold systematic and random parts; how these move together cannot be told", "split the inputs, so that those that move together are all systematic or all random", "correlation-mixed");
        else
            return new(pair.Item1, pair.Item2, r.Value);
        return null;
    }

    private static int Index(Group group, YamlNode node, List<InputRead> inputs)
    {
        if (group.Single(node, "a") is not { } name)
            return -1;
        var index = inputs.FindIndex(i => string.Equals(i.Name, name.Text, StringComparison.Ordinal));
        if (index < 0)
            group.Add(name.At, $"no input is called '{name.Text}'", NearName.Find(name.Text, inputs.Select(i => i.Name)) is { } near ? $"write {near}" : "write the name of an input", "unknown-input");
        return index;
    }
}
