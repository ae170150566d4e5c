using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>What quantities have in common: a dimension, and bounds in SI that no sound model passes.</summary>
internal abstract record BoundedForm(Dimension Dimension, double Least, double Most) : ScalarForm
{
    /// <summary>Whether the lower bound itself is refused.</summary>
    public bool AboveLeast { get; init; }

    public string Units => string.Join(", ", UnitTable.SymbolsOf(Dimension));

    protected string Usual => UnitTable.SymbolsOf(Dimension)[0];

    protected bool Within(double si, YamlScalar scalar, ReadContext context)
    {
        if ((AboveLeast ? si > Least : si >= Least) && si <= Most)
            return true;
        context.Add(scalar.At, $"{scalar.Text} is out of range: {Range}", "write the value that is meant, and see to its unit", "out-of-range");
        return false;
    }

    private string Range
    {
        get
        {
            var unit = UnitTable.Find(Usual)!;
            var low = string.Create(CultureInfo.InvariantCulture, $"{Least / unit.Factor - unit.Offset:G4}");
            var high = string.Create(CultureInfo.InvariantCulture, $"{Most / unit.Factor - unit.Offset:G4}");
            return AboveLeast ? $"above {low} and at most {high} {Usual} can stand here" : $"{low} to {high} {Usual} can stand here";
        }
    }
}

/// <summary>A number with its unit; read as a double in SI.</summary>
internal sealed record QuantityForm(Dimension Dimension, double Least, double Most) : BoundedForm(Dimension, Least, Most)
{
    public override string Words => $"{Dimension.ToString().ToLowerInvariant()} in {Units}";

    protected override string Example => $"12 {Usual}";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["pattern"] = @"^\s*[+-]?[0-9.]+([eE][+-]?[0-9]+)?\s*\D", ["description"] = $"unit: {Units}" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context) =>
        context.Take(scalar, QuantityReader.Read(scalar.Text, Dimension)) is double si && Within(si, scalar, context) ? si : null;
}

/// <summary>Two pressures or two forces.</summary>
internal sealed record WindowForm(Dimension Dimension, double Least, double Most) : BoundedForm(Dimension, Least, Most)
{
    public override string Words => $"two limits with `..` between, {Dimension.ToString().ToLowerInvariant()} in {Units}";

    protected override string Example => $"680 {Usual} .. 720 {Usual}";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["pattern"] = @"^.+\.\..+$", ["description"] = $"unit: {Units}" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (context.Take(scalar, QuantityReader.ReadWindow(scalar.Text, Dimension)) is not (double low, double high) || !Within(low, scalar, context) || !Within(high, scalar, context))
            return null;
        return Dimension == Dimension.Force
            ? new ForceWindow(Force.FromNewtons(low), Force.FromNewtons(high))
            : new PressureWindow(Pressure.FromPascals(low), Pressure.FromPascals(high));
    }
}

/// <summary>A tightening torque with its tolerance.</summary>
internal sealed record TorqueForm() : BoundedForm(Dimension.Torque, 0, 5000)
{
    public override string Words => $"torque in {Units}, with a tolerance after `±`";

    protected override string Example => "85 N·m ± 5 %";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["description"] = "such as 85 N·m ± 5 %" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context) =>
        context.Take(scalar, QuantityReader.ReadWithTolerance(scalar.Text, Dimension)) is (double torque, double share) && Within(torque, scalar, context)
            ? new TorqueSpec(Torque.FromNewtonMetres(torque), share)
            : null;
}

/// <summary>What it takes to loosen or draw: a torque or a force.</summary>
internal sealed record BreakawayForm : ScalarForm
{
    public override string Words => "torque in N·m, or force in N or kN";

    protected override string Example => "85 N·m";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["description"] = "such as 85 N·m or 12 kN" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        var force = QuantityReader.Read(scalar.Text, Dimension.Force);
        if (force is TextReading<double>.Good(var newtons) && newtons is > 0 and <= 1e7)
            return Force.FromNewtons(newtons);
        return context.Take(scalar, QuantityReader.Read(scalar.Text, Dimension.Torque)) is double torque && new QuantityForm(Dimension.Torque, 0, 5000) { AboveLeast = true }.Read(scalar, context) is not null
            ? Torque.FromNewtonMetres(torque)
            : null;
    }
}

/// <summary>A price, or a price for a litre.</summary>
internal sealed record MoneyForm(bool PerLitre = false) : ScalarForm
{
    public override string Words => PerLitre ? "price for a litre with currency (ISO 4217)" : "price with currency (ISO 4217)";

    protected override string Example => PerLitre ? "18.50 EUR/l" : "12.40 EUR";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["pattern"] = PerLitre ? @"^\s*[+]?[0-9.]+\s*[A-Z]{3}\s*/\s*[lL]\s*$" : @"^\s*[+]?[0-9.]+\s*[A-Z]{3}\s*$" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context) =>
        context.Take(scalar, PerLitre ? MoneyReader.ReadPerLitre(scalar.Text) : MoneyReader.Read(scalar.Text));
}
