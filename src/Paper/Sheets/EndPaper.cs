using Ramwright.Metrology.Text;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Paper.Signs;
using Ramwright.Proving.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The paper of an end without release: one page.</summary>
public static class EndPaper
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(EndPaperInput input, PaperSize size, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(input);
        var head = new SheetHead
        {
            Title = TitleOf(input.Kind),
            Aside = input.House.Name,
            Subject = $"{SheetText.Tool(input.Job)}, job {input.Job.Number}",
            House = input.House.Name,
            Made = new DateTimeOffset(input.Ended.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            Block = new()
            {
                Upper = [new("Tool", SheetText.Tool(input.Job), 1.5), new("Job", input.Job.Number), new("For", input.Job.Customer, 1.3), new("Ended", SheetText.Date(input.Ended))],
                Lower = [new("Signed by", input.SignedBy.ToString(), 1.5), new("Paper", input.Number), new("Ledger", SheetText.Ledger(input.Ledger), 1.3), new("Replaces", "none")],
            },
        };
        return SheetWriter.Write(head, size, flow => Fill(flow, input, units));
    }

    private static string TitleOf(EndKind kind) => kind switch
    {
        EndKind.ReturnedUnrepaired => "Returned unrepaired",
        EndKind.Retired => "Retired",
        EndKind.NotProven => "Not proven",
        _ => "Sent out",
    };

    private static string MeaningOf(EndPaperInput input) => input.Kind switch
    {
        EndKind.ReturnedUnrepaired => "This tool goes back without repair. It was not proven here and carries no proof report. Do not use it until it has been repaired and proven.",
        EndKind.Retired => "This tool is at the end of its life. It must not be used again, nor be repaired for use.",
        EndKind.NotProven => "This tool was worked on, but it could not be shown to keep its limits. It carries no proof report. Do not use it until it has been proven.",
        _ => $"This tool was sent out{(input.SentTo is { } to ? $" to {to}" : "")}. This house gives no word on its condition and no proof report.",
    };

    private static void Fill(Flow flow, EndPaperInput input, UnitSystem units)
    {
        flow.Space(6);
        flow.Paragraph(new Span(MeaningOf(input), TextStyle.Sum with { Size = 12, Leading = 16.5 }));
        flow.Rule(8, 10);
        flow.Heading("Why");
        flow.Paragraph(new Span(SheetText.Sentence(input.Why), TextStyle.Body));
        if (input.Verdict is { } verdict)
        {
            flow.Space(10);
            var sentences = string.Join(" ", verdict.Reasons.Select(r => SheetText.Sentence(ReasonText.Of(r, units))));
            flow.Add(new AnswerPiece(VerdictMark.Of(verdict.Conformity), VerdictMark.Words(verdict.Conformity), sentences, flow.Width));
        }

        Section(flow, "Condition on receipt", input.Job.ConditionOnReceipt is { } words ? [words] : []);
        Section(flow, "Found", input.Found);
        Section(flow, "Done", input.Done);
        Section(flow, "How the tool leaves", input.StateOfTool);
        flow.Space(14);
        flow.Facts(110, ("received", input.Job.Received is { } day ? SheetText.Date(day) : null), ("customer's reference", input.Job.CustomerReference), ("sent to", input.SentTo));
        flow.Space(14);
        flow.Paragraph(new Span(SafetyWords.Pack + " " + SafetyWords.Defer, TextStyle.Small));
        flow.Space(6);
        flow.Add(new SignaturePiece(flow.Width, ("name", 1.2), ("signature", 1.4), ("date", 0.8)));
        flow.Add(new SignaturePiece(flow.Width, ("received by, name", 1.2), ("signature", 1.4), ("date", 0.8)));
    }

    private static void Section(Flow flow, string heading, IReadOnlyCollection<string> lines)
    {
        if (lines.Count == 0)
            return;
        flow.Space(10);
        flow.Heading(heading);
        flow.Points(lines.Select(SheetText.Sentence));
    }
}
