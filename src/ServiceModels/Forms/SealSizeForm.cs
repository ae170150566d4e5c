using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>An O-ring by its dash size, or by inner diameter and section.</summary>
internal sealed record SealSizeForm : ScalarForm
{
    private static readonly string[] Standards = ["ISO3601", "AS568"];

    public override string Words => "`ISO3601-219`, `AS568-219`, or inner diameter x section, `53.3 mm x 5.3 mm`";

    protected override string Example => "ISO3601-219";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string", ["pattern"] = @"^((ISO3601|AS568)-[0-9]{3}|.+\s[x×]\s.+)$" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        var text = scalar.Text;
        foreach (var standard in Standards)
            if (text.StartsWith(standard + "-", StringComparison.Ordinal) && text.Length == standard.Length + 4 && int.TryParse(text.AsSpan(standard.Length + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var dash))
                return new SealSize.Dash(standard, dash);
        var sides = text.Split([" x ", " × "], StringSplitOptions.TrimEntries);
        if (sides.Length == 2 && QuantityReader.Read(sides[0], Dimension.Length) is TextReading<double>.Good(var inner) && QuantityReader.Read(sides[1], Dimension.Length) is TextReading<double>.Good(var section))
            return Measured(inner, section, scalar, context);
        context.Add(scalar.At, $"'{text}' is no seal size", "write the dash size with three digits, ISO3601-219 or AS568-219, or inner diameter x section, 53.3 mm x 5.3 mm", "bad-size");
        return null;
    }

    private static SealSize.Measured? Measured(double inner, double section, YamlScalar scalar, ReadContext context)
    {
        if (section is > 0 and <= 0.05 && inner is > 0 and <= 2 && section < inner * 5)
            return new(Length.FromMetres(inner), Length.FromMetres(section));
        context.Add(scalar.At, $"{scalar.Text} is no O-ring: inner diameters go from 0 to 2000 mm, sections to 50 mm", "write inner diameter x section, 53.3 mm x 5.3 mm", "out-of-range");
        return null;
    }
}
