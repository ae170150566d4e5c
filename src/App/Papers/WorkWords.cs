using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Text;

namespace Ramwright.App.Papers;

/// <summary>The work of a job in a few lines, as a report tells it: what was opened, renewed, filled and set.</summary>
internal static class WorkWords
{
    public static ImmutableArray<string> Of(PaperSource source)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var (job, model) = (source.Job, source.Model);
        if (job.Strip is { Signed.Count: > 0 } strip)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"stripped in {strip.Signed.Count} steps to free {string.Join(", ", strip.Planned.What.Targets.Select(model.NameOf))}"));
        if (job.Rebuild is { Signed.Count: > 0 } rebuild)
        {
            var renewed = rebuild.Signed.Keys.Where(i => i < rebuild.Plan.Steps.Length).SelectMany(i => rebuild.Plan.Steps[i].NewParts).Distinct().ToList();
            if (renewed.Count > 0)
                lines.Add("renewed: " + string.Join(", ", renewed.Select(model.NameOf)));
            if (rebuild.Signed.Keys.Any(i => i < rebuild.Plan.Steps.Length && rebuild.Plan.Steps[i].Oil is { CubicMetres: > 0 }))
                lines.Add($"oil filled, {QuantityText.Show(rebuild.Plan.OilFilled, source.Units)}{(model.Fluid is { } oil ? $" of {oil.Class}{(oil.Grade is { } grade ? " " + grade.ToString(CultureInfo.InvariantCulture) : "")}" : "")}");
        }

        var turned = job.Setting.Screw;
        if (job.Setting.Turns.Count > 0)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"relief screw turned {Math.Abs(turned.Degrees):0}° {(turned.Radians >= 0 ? "clockwise" : "anticlockwise")} in all, in {job.Setting.Turns.Count} {(job.Setting.Turns.Count == 1 ? "turn" : "turns")}"));
        if (job.Setting.Locked is not null)
            lines.Add("relief screw locked");
        return lines.ToImmutable();
    }
}
