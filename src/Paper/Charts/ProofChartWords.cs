using System.Globalization;
using System.Text;
using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Charts;

/// <summary>A proof chart in words, for those who do not see it.</summary>
internal static class ProofChartWords
{
    public static string Describe(ProofChartInput input)
    {
        var to = new StringBuilder($"Limits {QuantityText.Show(input.Limits, input.Units)}.");
        var valid = input.Runs.Where(r => !r.Void).Select(r => r.Peak).ToList();
        if (valid.Count > 0)
            to.Append(CultureInfo.InvariantCulture, $" {valid.Count} of {input.Planned} runs, from {QuantityText.Show(valid.MinBy(p => p.Pascals), input.Units)} to {QuantityText.Show(valid.MaxBy(p => p.Pascals), input.Units)}.");
        else
            to.Append(CultureInfo.InvariantCulture, $" No run of {input.Planned} taken.");
        var voids = input.Runs.Length - valid.Count;
        if (voids > 0)
            to.Append(CultureInfo.InvariantCulture, $" {voids} void.");
        if (!input.AsFound.IsEmpty)
            to.Append(CultureInfo.InvariantCulture, $" As found: {string.Join(", ", input.AsFound.Select(p => QuantityText.Show(p, input.Units)))}.");
        return to.ToString();
    }
}
