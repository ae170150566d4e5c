using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>Reads an uncertainty budget (format ramwright-budget/1, docs/reference/uncertainty-budget.md): strictly, all mistakes at once.</summary>
public sealed class BudgetReader
{
    /// <summary>Largest file that is read, in bytes.</summary>
    public const int LargestFile = 1 << 20;

    private const string Format = "ramwright-budget/1";
    private readonly MistakeList _mistakes;

    private BudgetReader(MistakeList mistakes) => _mistakes = mistakes;

    /// <summary>Reads a budget from the bytes of a file, UTF-8.</summary>
    /// <param name="fileName">The name that mistakes carry; the file is not opened.</param>
    /// <param name="bytes">At most <see cref="LargestFile"/>; more is an answer.</param>
    public static BudgetReading Read(string fileName, ReadOnlySpan<byte> bytes)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        if (bytes.Length > LargestFile)
            return new BudgetReading.Refused([new(Place.Whole(fileName), "the file is larger than 1 MiB, far more than any budget", "give a budget file", "too-large")]);
        if (SourceText.Decode(fileName, bytes) is not SourceDecoding.Text(var source))
            return new BudgetReading.Refused([((SourceDecoding.NotText)SourceText.Decode(fileName, bytes)).Mistake]);
        var mistakes = new MistakeList(source);
        var file = YamlTree.Read(source, mistakes, $"begin it with 'format: {Format}'; docs/reference/uncertainty-budget.md shows a whole one") is { } root ? new BudgetReader(mistakes).ReadRoot(root) : null;
        return file is null || mistakes.Any ? new BudgetReading.Refused(mistakes.InOrder()) : new BudgetReading.Read(file);
    }

    private BudgetFile? ReadRoot(YamlNode root)
    {
        if (Group.Open(root, _mistakes, "a budget", $"format: {Format}", ["format", "result", "model", "coverage", "inputs", "correlations"]) is not { } group)
            return null;
        if (group.Single(group.Need("format", "which form the file has", Format), Format) is { } format && format.Text != Format)
            group.Add(format.At, $"the format '{format.Text}' is no budget that this program knows", $"write {Format}", "unknown-format");
        var (name, unit, unitAt) = ReadResult(group);
        var coverage = ReadCoverage(group);
        var inputs = ReadInputs(group);
        var correlations = new CorrelationReader(_mistakes).Read(group, inputs);
        var modelText = group.Single(group.Need("model", "how the result follows from the inputs", "p * A"), "p * A");
        if (modelText is null || ReadModel(group, modelText, inputs, unit, unitAt) is not { } model || _mistakes.Any)
            return null;
        var budget = new Budget(model, [.. inputs.Select(i => i.Input!)], correlations);
        return Evaluates(group, modelText, budget) ? new(name, unit, [.. inputs.Select(i => i.Unit)], coverage, budget) : null;
    }

    private (string Name, Unit? Unit, YamlScalar? At) ReadResult(Group group)
    {
        if (group.Need("result", "what comes out and in which unit", "{ name: force, unit: kN }") is not { } node || Group.Open(node, _mistakes, "the result", "{ name: force, unit: kN }", ["name", "unit"]) is not { } result)
            return ("", null, null);
        var name = result.Single(result.Need("name", "what comes out", "force"), "force")?.Text ?? "";
        if (result.Find("unit") is not { } entry || result.Single(entry.Value, "kN") is not { } scalar)
            return (name, null, null);
        if (UnitTable.Find(scalar.Text) is not { } unit)
            result.Add(scalar.At, $"'{scalar.Text}' is no unit known here", UnitTable.FindInOtherCase(scalar.Text) is { } other ? $"write {other.Symbol}: capitals count in units" : "write a unit of the list in docs/reference/uncertainty-budget.md, or take the key away for a plain number", "unknown-unit");
        else
            return (name, unit, scalar);
        return (name, null, null);
    }

    private static double ReadCoverage(Group group)
    {
        if (group.Find("coverage") is not { } entry || group.Single(entry.Value, "95 %") is not { } scalar || group.Take(scalar, QuantityReader.ReadShare(scalar.Text)) is not { } share)
            return 0.95;
        if (share is >= 0.5 and <= 0.9999)
            return share;
        group.Add(scalar.At, $"a coverage of {scalar.Text} is not worked out", "write 50 % to 99.99 %, mostly 95 %", "out-of-range");
        return 0.95;
    }

    private List<InputRead> ReadInputs(Group group)
    {
        var inputs = new List<InputRead>();
        if (group.Need("inputs", "what the result follows from", "{ p: { value: 700 bar } }") is not { } node || Group.Open(node, _mistakes, "inputs", "p: { value: 700 bar }", known: null) is not { } all)
            return inputs;
        var components = 0;
        foreach (var entry in all.Entries.Take(Budget.MostComponents))
        {
            var input = new InputReader(_mistakes).Read(entry);
            components += input.Input?.Components.Length ?? 0;
            inputs.Add(input);
        }

        if (Math.Max(components, all.Entries.Count()) is > Budget.MostComponents and var count)
            all.Add(all.At, string.Create(CultureInfo.InvariantCulture, $"there are {count} {(components == count ? "parts of uncertainty" : "inputs")}; {Budget.MostComponents} are taken"), "put small ones of one kind together by root sum of squares", "too-many-parts");
        return inputs;
    }

    private static Expression? ReadModel(Group group, YamlScalar text, List<InputRead> inputs, Unit? unit, YamlScalar? unitAt)
    {
        var read = Expression.Read(text.Text, [.. inputs.Select(i => i.Name)]);
        if (read is not TextReading<Expression>.Good(var model))
        {
            group.Report(text, ((TextReading<Expression>.Bad)read).Fault);
            return null;
        }

        for (var i = 0; i < inputs.Count; i++)
            if (!model.Uses(i))
                group.Add(inputs[i].At, $"'{inputs[i].Name}' is not in the model", "write it into the model, or take it away: it adds nothing as it is", "unused-input");
        if (inputs.Any(i => i.Input is null))
            return null;
        if (group.Take(text, UnitCheck.Check(model, [.. inputs.Select(i => PowersOf(i.Unit))])) is not { } powers)
            return null;
        if (powers == PowersOf(unit))
            return model;
        if (unitAt is null)
            group.Add(text.At, $"the model gives {powers}, and the result has no unit", "add unit: to the result", "wrong-dimension");
        else
            group.Add(unitAt.At, $"the model gives {powers}, and {unitAt.Text} is {PowersOf(unit)}", "see to the result's unit and to the model", "wrong-dimension");
        return null;
    }

    private static bool Evaluates(Group group, YamlScalar text, Budget budget)
    {
        switch (Propagation.Evaluate(budget))
        {
            case LinearAnswer.NoValue:
                group.Add(text.At, "the model has no value at these estimates: it divides by zero, or takes a root or logarithm of what has none", "see to the inputs' values", "no-value");
                return false;
            case LinearAnswer.NoSlope { Input: var input }:
                group.Add(text.At, $"the model has no finite slope by '{input}' at these estimates, so its share of the uncertainty cannot be told", "see to its value, or write the model another way", "no-value");
                return false;
            default:
                return true;
        }
    }

    private static Powers PowersOf(Unit? unit) => unit is null ? Powers.None : Powers.Of(unit.Dimension);
}

/// <summary>An input as far as it could be read.</summary>
internal sealed record InputRead(string Name, Place At, Unit? Unit, BudgetInput? Input);
