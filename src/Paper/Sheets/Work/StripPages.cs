using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets.Work;

/// <summary>The strip part of a work sheet.</summary>
internal static class StripPages
{
    private static readonly ImmutableArray<Column> StepColumns = [new(17, Fixed: true), new(12, Fixed: true), new(1), new(128, Fixed: true), new(36, Right: true, Fixed: true)];

    public static void Fill(Flow flow, WorkSheetInput input, UnitSystem units)
    {
        var plan = input.Strip!;
        flow.Heading("Strip", $"{plan.Steps.Length} steps{(plan.ProvenOptimal ? ", no cheaper order exists" : $", at most {plan.Gap.Rounded()} above the cheapest order")}");
        Map(flow, input);
        WorkSheet.Tools(flow, input.Model, plan.Tools);
        var table = new Tag(TagKind.Table);
        for (var i = 0; i < plan.Steps.Length; i++)
        {
            Step(flow, table, input.Model, plan.Steps[i], i + 1, units);
            if ((i + 1) % 7 == 0 && i + 1 < plan.Steps.Length)
                flow.Add(new PausePiece(flow.Width, $"Pause. Steps {i - 5} to {i + 1} done and laid out in order."));
        }

        Renewals(flow, input.Model, plan.Renewals);
        flow.Space(4);
        flow.Add(new SignaturePiece(flow.Width, ("strip done by, name", 1.2), ("signature", 1.4), ("date and time", 0.9)));
        flow.Space(12);
    }

    private static void Map(Flow flow, WorkSheetInput input)
    {
        if (input.Map is not { } map)
            return;
        var scale = Math.Min(flow.Width / map.Width, 215 / map.Height);
        flow.Add(new PicturePiece(map, scale, (flow.Width - (map.Width * scale)) / 2) { KeepWithNext = input.MapLegend is not null });
        if (input.MapLegend is { } legend)
            flow.Add(new PicturePiece(legend, Math.Min(1, Math.Min(flow.Width / legend.Width, 8 / 12.0))));
        flow.Space(6);
    }

    private static void Step(Flow flow, Tag table, ServiceModel model, StripStep step, int number, UnitSystem units)
    {
        foreach (var caution in step.Cautions)
            flow.Add(new CautionPiece(caution, flow.Width) { KeepWithNext = true });
        var inspections = step.Inspections.Select(id => Find(model, step.Node, id)).OfType<Inspection>().ToImmutableArray();
        flow.Row(
            table,
            StepColumns,
            [
                new Cell.Number(number.ToString(CultureInfo.InvariantCulture)),
                new Cell.Tick(),
                Cell.Of([new Span(SheetText.Sentence(step.Operation).TrimEnd('.'), TextStyle.Step), .. Details(model, step, units)]),
                Cell.Of([.. How(model, step.Tool, step.Posture)]),
                new Span(TimeText.Minutes(step.Time), TextStyle.Quiet),
            ],
            inspections.IsEmpty ? Ink.Rule : null,
            keepWithNext: !inspections.IsEmpty);
        for (var i = 0; i < inspections.Length; i++)
            InspectionRow.Add(flow, table, inspections[i], units, last: i == inspections.Length - 1);
    }

    internal static IEnumerable<Span> How(ServiceModel model, ToolId? tool, PostureId? posture)
    {
        if (tool is { } t)
            yield return new(WorkSheet.ToolName(model, t), TextStyle.Strong);
        if (posture is { } p)
        {
            yield return Span.Break;
            yield return new(WorkSheet.PostureName(model, p), TextStyle.Quiet);
        }
    }

    private static IEnumerable<Span> Details(ServiceModel model, StripStep step, UnitSystem units)
    {
        var way = step.Way is { } w && model.FindPart(step.Node) is { } part && w < part.WaysOff.Length ? part.WaysOff[w] : null;
        List<string> facts = [];
        if (way?.HeldBy is { } hold)
            facts.Add(HoldWords(hold));
        if (way?.Breakaway is { } torque)
            facts.Add("breakaway " + QuantityText.Show(torque, units));
        if (way?.BreakawayForce is { } force)
            facts.Add("press or draw with " + QuantityText.Show(force, units));
        if (way?.OutOfSight == true)
            facts.Add("out of sight");
        if (facts.Count > 0)
        {
            yield return Span.Break;
            yield return new(string.Join(" · ", facts), way?.HeldBy?.Hand == ThreadHand.Left ? TextStyle.Strong : TextStyle.Body);
        }

        yield return Span.Break;
        yield return new(WhyWords(model, step.Why), TextStyle.Small);
        foreach (var renewal in step.Renewals)
        {
            yield return Span.Break;
            yield return new($"Renew: {model.NameOf(renewal.Part)}{(renewal.Count > 1 ? $" × {renewal.Count}" : "")} ({WorkSheet.CauseWords(renewal.Cause)})", TextStyle.Pencil);
        }
    }

    private static string WhyWords(ServiceModel model, StepReason why) => why switch
    {
        StepReason.InTheWayOf way => "In the way of " + string.Join(", ", way.Nodes.Take(4).Select(model.NameOf)) + (way.Nodes.Length > 4 ? " and more." : "."),
        _ => "Asked for.",
    };

    private static string HoldWords(Holding hold)
    {
        var kind = hold.Kind switch
        {
            HoldKind.Thread => hold.Hand == ThreadHand.Left ? "left-hand thread: clockwise loosens" : "right-hand thread",
            HoldKind.Clamp => "clamped",
            HoldKind.PressFit => "press fit",
            HoldKind.LockScrew => "lock screw",
            HoldKind.Snap => "snap",
            HoldKind.Adhesive => "adhesive",
            HoldKind.Pin => "pin",
            _ => "loose",
        };
        return hold.AdhesiveLocked ? kind + ", locked with adhesive" : kind;
    }

    private static Inspection? Find(ServiceModel model, NodeId node, InspectionId id) =>
        model.FindPart(node)?.Inspections.FirstOrDefault(i => i.Id == id) ?? model.Parts.SelectMany(p => p.Inspections).FirstOrDefault(i => i.Id == id);

    private static void Renewals(Flow flow, ServiceModel model, ImmutableArray<Renewal> renewals)
    {
        if (renewals.IsEmpty)
            return;
        flow.Space(8);
        flow.Heading("To renew", "none of these goes back in");
        flow.Table(
            [new(1), new(110, Fixed: true), new(42, Right: true, Fixed: true), new(110, Fixed: true), new(52, Fixed: true)],
            ["part", "number", "count", "because", "new one here"],
            renewals.Select(r => (ImmutableArray<Cell>)[new Span(model.NameOf(r.Part), TextStyle.Pencil), model.FindPart(r.Part)?.Number ?? "", r.Count.ToString(CultureInfo.InvariantCulture), WorkSheet.CauseWords(r.Cause), new Cell.Tick()]));
    }
}
