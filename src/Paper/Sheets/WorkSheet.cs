using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Paper.Sheets.Work;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets;

/// <summary>The work sheet: strip and rebuild, step by step, to be ticked and signed at the vice.</summary>
public static class WorkSheet
{
    /// <summary>The sheet as PDF.</summary>
    /// <exception cref="ArgumentException">A bug in the caller: neither a strip nor a rebuild plan.</exception>
    public static byte[] Render(WorkSheetInput input, PaperSize size, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Strip is null && input.Rebuild is null)
            throw new ArgumentException("A work sheet needs a strip plan or a rebuild plan.", nameof(input));
        var title = (input.Strip, input.Rebuild) switch
        {
            (not null, not null) => "Work sheet: strip and rebuild",
            (not null, null) => "Work sheet: strip",
            _ => "Work sheet: rebuild",
        };
        var head = new SheetHead
        {
            Title = title,
            Aside = input.House.Name,
            Subject = $"{SheetText.Tool(input.Job)}, job {input.Job.Number}",
            House = input.House.Name,
            Made = input.PrintedAt,
            Block = new()
            {
                Upper = [new("Tool", SheetText.Tool(input.Job), 1.5), new("Job", input.Job.Number, 0.8), new("For", input.Job.Customer, 1.4), new("Printed", SheetText.Moment(input.PrintedAt), 1.2)],
                Lower = [new("Planned by", input.PlannedBy?.ToString() ?? "the bench", 1.5), new("Service model", ModelName(input.Model), 0.8), new("Ledger", SheetText.Ledger(input.Ledger), 1.4), new("Model sha-256", SheetText.ShortHash(input.Model.Fingerprint), 1.2)],
            },
        };
        return SheetWriter.Write(head, size, flow => Fill(flow, input, units));
    }

    private static string ModelName(ServiceModel model) => model.Tool.Revision is { } r ? $"{model.Tool.Id}, rev. {r}" : model.Tool.Id;

    private static void Fill(Flow flow, WorkSheetInput input, UnitSystem units)
    {
        if (input.Purpose is { } purpose)
        {
            flow.Paragraph(new Span(SheetText.Sentence(purpose), TextStyle.Body with { Size = 10.5, Leading = 14.5 }));
            flow.Space(6);
        }

        flow.Add(new FiguresPiece(flow.Width, [.. Figures(input, units)]));
        flow.Space(8);
        MakeSafe(flow, input.Model);
        if (input.Strip is not null)
            StripPages.Fill(flow, input, units);
        if (input is { Strip: not null, Rebuild: not null })
            flow.PageBreak();
        if (input.Rebuild is not null)
            RebuildPages.Fill(flow, input, units);
    }

    private static IEnumerable<(string, string, string?)> Figures(WorkSheetInput input, UnitSystem units)
    {
        if (input.Strip is { } strip)
            yield return ("Strip, likely", QuantityText.Show(strip.LikelyTime), $"safe {QuantityText.Show(strip.SafeTime)} (nine of ten)");
        if (input.Rebuild is { } rebuild)
            yield return ("Rebuild, likely", QuantityText.Show(rebuild.LikelyTime), $"safe {QuantityText.Show(rebuild.SafeTime)} (nine of ten)");
        var oil = input.Rebuild is { } r ? QuantityText.Show(r.OilFilled, units) : QuantityText.Show(input.Strip!.OilLost, units);
        yield return (input.Rebuild is null ? "Oil lost" : "Oil to fill", oil, FluidName(input.Model));
    }

    private static string? FluidName(ServiceModel model) => model.Fluid is not { } f ? null : f.Grade is { } g ? $"{f.Class} {g.ToString(CultureInfo.InvariantCulture)}" : f.Class;

    private static void MakeSafe(Flow flow, ServiceModel model)
    {
        flow.Add(new CautionPiece(new(CautionLevel.Danger, "oil-injection", $"{SafetyWords.Injection} {SafetyWords.Springs} {SafetyWords.Pack} {SafetyWords.Defer}"), flow.Width));
        var isolating = model.States.Where(s => s.Isolates).Select(s => s.Name).ToList();
        var words = isolating.Count > 0 ? "Make safe first: " + string.Join(", ", isolating) + "." : "Make safe first. " + SafetyWords.Isolation;
        flow.Space(4);
        flow.Add(new PausePiece(flow.Width, words));
        flow.Space(10);
    }

    internal static void Tools(Flow flow, ServiceModel model, ImmutableArray<ToolId> tools)
    {
        if (tools.IsEmpty)
            return;
        flow.Paragraph(keepWithNext: true, new Span("Tools, in order of first use: ", TextStyle.Strong), new Span(string.Join("; ", tools.Select(t => ToolName(model, t))) + ".", TextStyle.Body));
        flow.Add(new SpacePiece(4) { KeepWithNext = true });
    }

    internal static string ToolName(ServiceModel model, ToolId id) => model.FindTool(id) switch
    {
        ShopTool.Made made => made.Name + " (made here)",
        { } tool => tool.Name,
        null => id.Value,
    };

    internal static string PostureName(ServiceModel model, PostureId id) =>
        model.Postures.FirstOrDefault(p => p.Id == id)?.Name ?? id.Value.Replace('-', ' ');

    internal static string CauseWords(RenewalCause cause) => cause switch
    {
        RenewalCause.Disturbed => "disturbed",
        RenewalCause.Destroyed => "does not survive",
        RenewalCause.FailedInspection => "failed its inspection",
        RenewalCause.Asked => "asked for",
        _ => "by its rule",
    };
}
