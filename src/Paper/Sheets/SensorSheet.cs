using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;

namespace Ramwright.Paper.Sheets;

/// <summary>The short report of a sensor check: the tool's own pressure sensor against a reference, as after it was replaced.</summary>
public static class SensorSheet
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(SensorSheetInput input, PaperSize size, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(input);
        var head = new SheetHead
        {
            Title = "Sensor check",
            Aside = $"{input.House.Name} · not issued under accreditation",
            Subject = $"Sensor check {input.Number}, {SheetText.Tool(input.Job)}, job {input.Job.Number}",
            House = input.House.Name,
            Made = input.Issued,
            Block = new()
            {
                Upper = [new("Tool", SheetText.Tool(input.Job), 1.5), new("Job", input.Job.Number), new("For", input.Job.Customer, 1.3), new("Compared", SheetText.Date(input.Compared))],
                Lower = [new("By", input.ComparedBy.ToString(), 1.5), new("Paper", input.Number), new("Ledger", SheetText.Ledger(input.Ledger), 1.3), new("Issued", SheetText.Date(input.Issued))],
            },
        };
        return SheetWriter.Write(head, size, flow => Fill(flow, input, units));
    }

    private static void Fill(Flow flow, SensorSheetInput input, UnitSystem units)
    {
        flow.Space(6);
        flow.Paragraph(new Span($"{SensorText.Head(input.Answer)}.", TextStyle.Sum with { Size = 12, Leading = 16.5 }));
        flow.Paragraph(new Span(SensorText.Explain(input.Answer), TextStyle.Body));
        flow.Rule(8, 10);
        if (SensorText.Figures(input.Answer) is { } figures)
        {
            flow.Heading("What the comparison shows", $"allowed: off by {Show(input.Task.AllowedPascals, units)}");
            flow.Facts(130,
                ("worst level", $"off by {Show(figures.WorstError, units)}, mean of its comparisons"),
                ("known to", $"± {Show(figures.Expanded, units)} (k = 2): reference {Show(2 * input.Task.ReferenceStandardPascals, units)}, repeats, hysteresis, steps"),
                ("zero", Show(figures.Zero, units)),
                ("gain", figures.Gain.ToString("0.0000", CultureInfo.InvariantCulture)),
                ("farthest off its line", Show(figures.NonLinearity, units)),
                ("hysteresis", figures.Hysteresis is { } h ? Show(h, units) : "taken from one side alone"),
                ("repeats", $"standard deviation {Show(figures.Repeatability, units)}"));
            flow.Space(10);
        }

        var unit = QuantityText.Parts(Pressure.FromBar(0), units).Unit;
        flow.Heading("Every comparison, " + unit, "at held pressures");
        flow.Table([new(1), new(1, Right: true), new(1, Right: true), new(1, Right: true), new(1)], ["level", "reference", "tool", "off", "reached"],
            input.Points.OrderBy(p => p.Level).Select(p => (ImmutableArray<Cell>)[(p.Level + 1).ToString(CultureInfo.InvariantCulture), Number(p.Reference, units), Number(p.Reading, units), Number(p.Reading - p.Reference, units), p.Rising ? "from below" : "from above"]));
        flow.Space(10);
        flow.Heading("Compared with");
        flow.Facts(130,
            (input.Reference.Kind, input.Reference.Serial is null ? input.Reference.Id : $"{input.Reference.Id}, no. {input.Reference.Serial}"),
            ("calibrated", input.Reference.Calibrated is { } on ? SheetText.Date(on) : "date not recorded"),
            ("due", input.Reference.CalibrationDue is { } due ? SheetText.Date(due) : "no date set"),
            ("certificate", input.Reference.Certificate));
        flow.Space(10);
        flow.Paragraph(new Span($"{SafetyWords.OnlyThisItem} This is no proof report: a proof by the tool's own memory carries this comparison's uncertainty and stands for this visit alone. {SafetyWords.Defer} {SafetyWords.Injection}", TextStyle.Small));
        flow.Paragraph(new Span($"Sensor check {input.Number}. Ledger entry {input.Ledger.Entry}, head {input.Ledger.Head}.", TextStyle.Small));
    }

    private static string Show(double pascals, UnitSystem units) => QuantityText.Show(Pressure.FromPascals(pascals), units, units == UnitSystem.Metric ? 1 : 0);

    private static string Number(double pascals, UnitSystem units) => QuantityText.Parts(Pressure.FromPascals(pascals), units, units == UnitSystem.Metric ? 1 : 0).Number;
}
