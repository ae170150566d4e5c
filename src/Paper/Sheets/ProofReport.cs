using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Paper.Sheets.Proof;
using Ramwright.Paper.Signs;
using Ramwright.Proving.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The code that is printed on a report, so that a print can be checked.</summary>
/// <param name="Text">The code's text, signed.</param>
/// <param name="Key">Name of the key that signed it.</param>
public sealed record PrintedCode(string Text, string Key);

/// <summary>
/// The proof report. It has what ISO/IEC 17025:2017, 7.8 asks of a report (list from memory) and says that it is not issued under accreditation.
/// </summary>
public static class ProofReport
{
    /// <summary>The sheet as PDF, before the file itself is signed.</summary>
    /// <param name="code">What is printed as a code; null on a sheet that nobody signs.</param>
    public static byte[] Render(ProofReportInput input, PaperSize size, UnitSystem units, PrintedCode? code = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        var head = new SheetHead
        {
            Title = "Proof report",
            Aside = $"{input.House.Name} · not issued under accreditation",
            Subject = $"Proof report {input.Number}, {SheetText.Tool(input.Job)}, job {input.Job.Number}",
            House = input.House.Name,
            Made = input.Issued,
            Block = new()
            {
                Code = code is null ? null : QrPicture.Of(code.Text, "Code with number, verdict, figures and signature"),
                CodeWords = input.Number,
                Upper = [new("Tool", SheetText.Tool(input.Job), 1.4), new("Job", input.Job.Number, 1), new("For", input.Job.Customer, 1.62), new("Tested", SheetText.Date(input.Tested), 1)],
                Lower = [new("Released by", input.ReleasedBy.ToString(), 1.4), new("Issued", SheetText.Date(input.Issued), 1), new("Ledger", SheetText.Ledger(input.Ledger), 1.62), new("Replaces", input.Replaces ?? "none", 1)],
            },
        };
        return SheetWriter.Write(head, size, flow => Fill(flow, input, size, units, code));
    }

    private static void Fill(Flow flow, ProofReportInput input, PaperSize size, UnitSystem units, PrintedCode? code)
    {
        flow.Add(new AnswerPiece(VerdictMark.Of(input.Verdict.Conformity), VerdictMark.Words(input.Verdict.Conformity), DecisionWords.Answer(input, units), flow.Width));
        flow.Rule(0, 8);
        Chart(flow, input, (input.AsFound.IsEmpty ? 112 : 146) + (size == PaperSize.A4 ? 36 : 0), units);
        flow.Space(10);
        flow.Heading("Decision", "limits " + QuantityText.Show(input.Series.Limits, units) + ", nominal " + QuantityText.Show(input.Limits.Nominal, units));
        ProofTables.Claims(flow, input, units);
        flow.Facts(100, ProofTables.Statistics(input, units));
        flow.Space(4);
        flow.Whole(new Span("Decision rule. ", TextStyle.SmallInk with { Bold = true }), new Span(DecisionWords.Rule(input), TextStyle.SmallInk));
        flow.Space(4);
        Standing(flow, input, code);
        flow.Space(10);
        flow.Heading("What the reference may be off", input.Reference is { } budget ? BudgetText.Of(budget.Kind) + ", at the middle of the limits" : null);
        ReferenceTable.Fill(flow, input.Reference, input.Series, units);
        flow.Space(10);
        flow.Columns(26, 420, (1, f => Device(f, input)), (1, f =>
        {
            Conditions(f, input, units);
            f.Space(8);
            Work(f, input, units);
        }
        ));
        flow.Space(8);
        BesideTheVerdict.Fill(flow, input, units);
        flow.Space(10);
        Closing(flow, input);
    }

    private static void Chart(Flow flow, ProofReportInput input, double height, UnitSystem units)
    {
        var unit = QuantityText.Parts(input.Series.Limits.Min, units).Unit;
        flow.Heading("Peak of each full run, " + unit, "strong lines: limits · hatched: counted against the tool · rings: as found");
        var chart = ProofChart.Of(new()
        {
            Limits = input.Series.Limits,
            Nominal = input.Limits.Nominal,
            GuardLow = input.Verdict.GuardLow,
            GuardHigh = input.Verdict.GuardHigh,
            Planned = input.Verdict.PlannedRuns,
            Runs = [.. input.Runs.Select(r => new ChartRun(r.Peak, r.VoidCause is not null))],
            AsFound = [.. input.AsFound.Select(r => r.Peak)],
            Units = units,
            ShowValues = false,
            Width = flow.Width,
            Height = height,
            LabelSize = 8,
        });
        flow.Picture(chart);
        flow.Space(4);
        ProofTables.Runs(flow, input.Runs, units);
        flow.Space(2);
        ProofTables.AsFound(flow, input, units);
    }

    private static void Device(Flow flow, ProofReportInput input)
    {
        var device = input.Device;
        flow.Heading("Measured with");
        flow.Facts(
            70,
            (device.Kind, device.Serial is null ? device.Id : $"{device.Id}, no. {device.Serial}"),
            ("calibrated", $"{(device.Calibrated is { } on ? SheetText.Date(on) : "date not recorded")}, {(device.CalibrationDue is { } due ? "due " + SheetText.Date(due) : "no date set for the next")}"),
            ("certificate", device.Certificate),
            ("range", Joined(device.Range, device.Response)),
            ("load", input.Load),
            ("method", input.Method));
    }

    private static void Conditions(Flow flow, ProofReportInput input, UnitSystem units)
    {
        flow.Heading("Conditions");
        var oil = (input.OilTemperatureFirst, input.OilTemperatureLast) switch
        {
            ({ } a, { } b) => $"{QuantityText.Show(a, units, 0)} at the first run, {QuantityText.Show(b, units, 0)} at the last",
            ({ } a, null) => QuantityText.Show(a, units, 0),
            _ => "not recorded",
        };
        flow.Facts(
            70,
            ("received", Joined(input.Job.Received is { } day ? SheetText.Date(day) : null, input.Job.ConditionOnReceipt)),
            ("tested", $"{SheetText.Date(input.Tested)}, by {input.TestedBy}"),
            ("bench", input.BenchTemperature is { } t ? QuantityText.Show(t, units, 0) : "temperature not recorded"),
            ("oil", oil),
            ("rest", "at least " + QuantityText.Show(input.Limits.Rest) + " between runs"),
            ("next due", input.NextDueAsAgreed is { } due ? $"{SheetText.Date(due)}, as agreed with the customer" : null));
    }

    private static void Work(Flow flow, ProofReportInput input, UnitSystem units)
    {
        flow.Heading("Work done");
        var found = input.AsFound.IsEmpty
            ? input.NoAsFound ?? "not measured"
            : $"{QuantityText.Show(Mean(input.AsFound), units, units == UnitSystem.Metric ? 1 : 0)}, mean of {input.AsFound.Length}";
        flow.Facts(
            52,
            [
                ("as found", found),
                ("done", input.WorkDone.IsEmpty ? null : string.Join("; ", input.WorkDone)),
                ("as left", input.Verdict.Mean is { } mean ? QuantityText.Show(mean, units, units == UnitSystem.Metric ? 1 : 0) + ", mean of the proof" : null),
            ]);
        if (input.WorkDone.IsEmpty)
            flow.Paragraph(new Span("Nothing was done to the tool between as found and as left.", TextStyle.Body));
    }

    private static void Closing(Flow flow, ProofReportInput input)
    {
        flow.Points(input.Remarks.Select(SheetText.Sentence));
        flow.Paragraph(new Span(
            $"{SafetyWords.OnlyThisItem} {SafetyWords.NoPromise} {SafetyWords.Defer} {SafetyWords.Injection} Not issued under accreditation. To be copied in full only.",
            TextStyle.Small));
    }

    /// <summary>What the paper stands on and how it is signed, beside its code.</summary>
    private static void Standing(Flow flow, ProofReportInput input, PrintedCode? code)
    {
        flow.Paragraph(new Span(
            $"Report {input.Number}. Ledger entry {input.Ledger.Entry}, head {input.Ledger.Head}.{(input.ModelFingerprint is { } f ? $" Service model sha-256 {f}." : "")} {Signed(input, code)}",
            TextStyle.Small));
    }

    private static string Signed(ProofReportInput input, PrintedCode? code) => code is null
        ? "Not signed."
        : $"File and code are signed with the key {code.Key} of the house{(input.Replaces is { } old ? $"; this report takes the place of {old}" : "")}. To check them: ramwright verify paper, or the house's check page.";

    private static Pressure Mean(ImmutableArray<RunLine> runs) => Pressure.FromPascals(runs.Average(r => r.Peak.Pascals));

    private static string? Joined(string? a, string? b) => (a, b) switch
    {
        (null, null) => null,
        (null, _) => b,
        (_, null) => a,
        _ => $"{a}, {b}",
    };
}
