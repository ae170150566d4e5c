using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Planning.Rebuild;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets.Work;

/// <summary>The rebuild part of a work sheet.</summary>
internal static class RebuildPages
{
    private static readonly ImmutableArray<Column> Columns = [new(17, Fixed: true), new(12, Fixed: true), new(1), new(112, Fixed: true), new(82, Fixed: true)];

    public static void Fill(Flow flow, WorkSheetInput input, UnitSystem units)
    {
        var plan = input.Rebuild!;
        flow.Heading("Rebuild", $"{plan.Steps.Length} steps; write the torque as applied");
        WorkSheet.Tools(flow, input.Model, plan.Tools);
        DoNotUse(flow, input);
        var table = new Tag(TagKind.Table);
        for (var i = 0; i < plan.Steps.Length; i++)
        {
            Step(flow, table, input.Model, plan.Steps[i], i + 1, units);
            if ((i + 1) % 7 == 0 && i + 1 < plan.Steps.Length)
                flow.Add(new PausePiece(flow.Width, $"Pause. Steps {i - 5} to {i + 1} done, torques written down."));
        }

        flow.Space(4);
        flow.Add(new SignaturePiece(flow.Width, ("rebuild done by, name", 1.2), ("signature", 1.4), ("date and time", 0.9)));
        flow.Add(new SignaturePiece(flow.Width, ("seen by, name", 1.2), ("signature", 1.4), ("date and time", 0.9)));
    }

    private static void DoNotUse(Flow flow, WorkSheetInput input)
    {
        if (input.Cover is not { DoNotUse.IsEmpty: false } cover)
            return;
        flow.Paragraph(keepWithNext: true, new Span("In the kits, but not for this tool: ", TextStyle.Pencil), new Span(string.Join("; ", cover.DoNotUse.Select(u => $"{u.What}{(u.Count > 1 ? $" × {u.Count}" : "")} ({u.Why})")) + ".", TextStyle.Body));
        flow.Space(4);
    }

    private static void Step(Flow flow, Tag table, ServiceModel model, RebuildStep step, int number, UnitSystem units)
    {
        foreach (var caution in step.Cautions)
            flow.Add(new CautionPiece(caution, flow.Width) { KeepWithNext = true });
        Cell box = step.Torque is not null ? new Cell.Write("applied", TorqueUnit(step.Torque, units))
            : step.Oil is { } oil ? new Cell.Write("filled", QuantityText.Parts(oil, units).Unit)
            : "";
        flow.Row(
            table,
            Columns,
            [
                new Cell.Number(number.ToString(CultureInfo.InvariantCulture)),
                new Cell.Tick(),
                Cell.Of([new Span(SheetText.Sentence(step.Operation).TrimEnd('.'), TextStyle.Step), .. Details(model, step, units)]),
                Cell.Of([.. StripPages.How(model, step.Tool, step.Posture)]),
                box,
            ],
            Ink.Rule);
    }

    private static string TorqueUnit(TorqueSpec spec, UnitSystem units) => QuantityText.Parts(spec.Torque, units).Unit;

    private static IEnumerable<Span> Details(ServiceModel model, RebuildStep step, UnitSystem units)
    {
        if (step.Torque is { } spec)
        {
            yield return Span.Break;
            yield return new($"{QuantityText.Show(spec.Torque, units)} ± {SheetText.Percent(spec.Tolerance)} ({Range(spec, units)})", TextStyle.Strong);
        }

        List<string> facts = [];
        if (step.Hand is { } hand)
            facts.Add(hand == ThreadHand.Left ? "left-hand thread: anticlockwise tightens" : "right-hand thread");
        if (step.Lubricant is { } grease)
            facts.Add(grease);
        if (step.Orientation is { } way)
            facts.Add(way);
        if (step.Oil is { } oil)
            facts.Add("oil, " + QuantityText.Show(oil, units));
        if (facts.Count > 0)
        {
            yield return Span.Break;
            yield return new(string.Join(" · ", facts), step.Hand == ThreadHand.Left ? TextStyle.Strong : TextStyle.Body);
        }

        if (step.Parts.Length > 1)
        {
            yield return Span.Break;
            yield return new("With: " + string.Join(", ", step.Parts.Select(model.NameOf)) + ".", TextStyle.Small);
        }

        if (!step.NewParts.IsEmpty)
        {
            yield return Span.Break;
            yield return new("New: " + string.Join(", ", step.NewParts.Select(model.NameOf)), TextStyle.Pencil);
        }
    }

    private static string Range(TorqueSpec spec, UnitSystem units)
    {
        var (low, high) = ((1 - spec.Tolerance) * spec.Torque, (1 + spec.Tolerance) * spec.Torque);
        var (a, b) = (QuantityText.Parts(low, units), QuantityText.Parts(high, units));
        return a.Unit == b.Unit ? $"{a.Number}..{b}" : $"{a}..{b}";
    }
}
