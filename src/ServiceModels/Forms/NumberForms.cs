using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>A whole number within bounds.</summary>
internal sealed record WholeNumberForm(int Least, int Most) : ScalarForm
{
    public override string Words => string.Create(CultureInfo.InvariantCulture, $"whole number {Least} to {Most}");

    protected override string Example => Least.ToString(CultureInfo.InvariantCulture);

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "integer", ["minimum"] = Least, ["maximum"] = Most };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (context.Take(scalar, QuantityReader.ReadPlain(scalar.Text)) is not double value)
            return null;
        if (value == Math.Floor(value) && value >= Least && value <= Most)
            return (int)value;
        context.Add(scalar.At, $"{scalar.Text} is not a {Words}", string.Create(CultureInfo.InvariantCulture, $"write a whole number from {Least} to {Most}"), "out-of-range");
        return null;
    }
}

/// <summary>A plain number within bounds; the unit is in the name of the key.</summary>
internal sealed record NumberForm(double Least, double Most, string Unit) : ScalarForm
{
    public override string Words => string.Create(CultureInfo.InvariantCulture, $"number{Of}, {Least} to {Most}");

    protected override string Example => "2.5";

    private string Of => Unit.Length == 0 ? "" : $" of {Unit}";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "number", ["minimum"] = Least, ["maximum"] = Most };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (context.Take(scalar, QuantityReader.ReadPlain(scalar.Text)) is not double value)
            return null;
        if (value >= Least && value <= Most)
            return value;
        context.Add(scalar.At, string.Create(CultureInfo.InvariantCulture, $"{scalar.Text} is outside {Least} to {Most}"), $"write a number{Of} within these bounds", "out-of-range");
        return null;
    }
}

/// <summary>A share, <c>25 %</c> or <c>0.25</c>, from 0 to 1.</summary>
internal sealed record ShareForm : ScalarForm
{
    public override string Words => "share, `25 %` or `0.25`";

    protected override string Example => "25 %";

    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["oneOf"] = new JsonArray(
            new JsonObject { ["type"] = "number", ["minimum"] = 0, ["maximum"] = 1 },
            new JsonObject { ["type"] = "string", ["pattern"] = @"^[+]?[0-9.]+([eE][+-]?[0-9]+)?\s*%$" }),
    };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (context.Take(scalar, QuantityReader.ReadShare(scalar.Text)) is not double share)
            return null;
        if (share is >= 0 and <= 1)
            return share;
        context.Add(scalar.At, $"{scalar.Text} is no share: a share lies between 0 and 100 %", share is > 1 and <= 100 && !scalar.Text.Contains('%', StringComparison.Ordinal)
            ? $"write {scalar.Text} % if per cent is meant" : "write a share from 0 % to 100 %", "share-out-of-range");
        return null;
    }
}
