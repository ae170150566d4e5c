using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Parts;

namespace Ramwright.Paper.Sheets;

/// <summary>The quote, with the customer's yes or no.</summary>
public static class QuoteSheet
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(QuoteSheetInput input, PaperSize size, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(input);
        var head = new SheetHead
        {
            Title = "Quote",
            Aside = input.House.Name,
            Subject = $"Quote {input.Number}, {SheetText.Tool(input.Job)}, job {input.Job.Number}",
            House = input.House.Name,
            Made = new DateTimeOffset(input.Issued.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            Block = new()
            {
                Upper = [new("Tool", SheetText.Tool(input.Job), 1.4), new("Job", input.Job.Number, 0.95), new("For", input.Job.Customer, 1.5), new("Quote", input.Number), new("Valid until", ValidUntil(input))],
                Lower = [new("Prepared by", input.PreparedBy.ToString(), 1.4), new("Issued", SheetText.Date(input.Issued), 0.95), new("Ledger", SheetText.Ledger(input.Ledger), 1.5), new("Replaces", input.Replaces ?? "none"), new("Currency", input.Quote.FirmNet.Currency)],
            },
        };
        return SheetWriter.Write(head, size, flow => Fill(flow, input, units));
    }

    private static string ValidUntil(QuoteSheetInput input) => SheetText.Date(input.Issued.AddDays((int)Math.Floor(input.Quote.Settings.ValidFor.TotalDays)));

    private static void Fill(Flow flow, QuoteSheetInput input, UnitSystem units)
    {
        var quote = input.Quote;
        flow.Columns(24, 220, (1, f => Address(f, "For", [input.Job.Customer, .. Optional("Your reference: ", input.Job.CustomerReference)])), (1, f => Address(f, "From", [input.House.Name, .. input.House.Address, .. input.House.Contact])));
        flow.Space(8);
        flow.Add(new FiguresPiece(
            flow.Width,
            ("Firm, with tax", Amount(quote.FirmGross), "the work offered below"),
            ("Not to exceed, with tax", Amount(quote.NotToExceedGross), "without asking you again"),
            ("Valid until", ValidUntil(input), TaxWords(quote))));
        flow.Space(10);
        if (!input.Found.IsEmpty && !input.Work.IsEmpty)
            flow.Columns(24, 300, (1, f => Section(f, "Found", input.Found)), (1, f => Section(f, "Offered", input.Work)));
        else
            Section(flow, input.Found.IsEmpty ? "Offered" : "Found", input.Found.IsEmpty ? input.Work : input.Found);
        FirmPart(flow, quote);
        OnCondition(flow, quote);
        Unpriced(flow, quote, units);
        Answer(flow, input);
    }

    private static void Address(Flow flow, string label, ImmutableArray<string> lines)
    {
        flow.Paragraph(new Span(label, TextStyle.Label));
        for (var i = 0; i < lines.Length; i++)
            flow.Paragraph(new Span(lines[i], i == 0 ? TextStyle.Value : TextStyle.Body));
    }

    private static ImmutableArray<string> Optional(string label, string? value) => value is null ? [] : [label + value];

    private static void Section(Flow flow, string heading, ImmutableArray<string> lines)
    {
        if (lines.IsEmpty)
            return;
        flow.Heading(heading);
        flow.Points(lines.Select(SheetText.Sentence));
        flow.Space(8);
    }

    private static void FirmPart(Flow flow, Quote quote)
    {
        flow.Heading("Firm part", "prices before tax, " + quote.FirmNet.Currency);
        ImmutableArray<Column> columns = [new(1), new(92, Fixed: true), new(62, Right: true, Fixed: true), new(66, Right: true, Fixed: true), new(70, Right: true, Fixed: true)];
        flow.Table(
            columns,
            ["", "number", "quantity", "each", "price"],
            quote.Firm.Select(l => (ImmutableArray<Cell>)[Capital(l.Text), l.Number ?? "", Quantity(l), Bare(l.UnitPrice), Bare(l.Price)]));
        Sums(flow, columns, ("before tax", quote.FirmNet), (TaxWords(quote), quote.FirmTax), ("Firm, with tax", quote.FirmGross));
        flow.Space(12);
    }

    private static void Sums(Flow flow, ImmutableArray<Column> columns, params ReadOnlySpan<(string Label, Money Sum)> sums)
    {
        var tag = new Tag(TagKind.Table);
        for (var i = 0; i < sums.Length; i++)
        {
            var style = i == sums.Length - 1 ? TextStyle.Value : TextStyle.Quiet;
            flow.Row(tag, [new(1, Right: true), columns[^1]], [new Span(sums[i].Label, style), new Span(Bare(sums[i].Sum), style)], i == sums.Length - 1 ? Ink.Frame : null, keepWithNext: i < sums.Length - 1);
        }
    }

    private static void OnCondition(Flow flow, Quote quote)
    {
        if (quote.OnCondition.IsEmpty)
        {
            flow.Paragraph("Nothing further depends on inspection: the firm part is all.");
            flow.Space(10);
            return;
        }

        flow.Heading("On condition", "only where the inspection of the open tool asks for it; before tax, " + quote.FirmNet.Currency);
        ImmutableArray<Column> columns = [new(1), new(62, Right: true, Fixed: true), new(66, Right: true, Fixed: true), new(66, Right: true, Fixed: true), new(70, Right: true, Fixed: true)];
        flow.Table(
            columns,
            ["", "chance", "parts", "labour", "price"],
            quote.OnCondition.Select(l => (ImmutableArray<Cell>)[Capital(l.Text), l.Chance is { } c ? SheetText.Percent(c, 0) : "not known", Bare(l.Parts), Bare(l.Labour), Bare(l.Price)]));
        Sums(flow, columns, ("expected with chances, before tax", quote.ExpectedNet), ("not to exceed, before tax", quote.NotToExceedNet), (TaxWords(quote), quote.NotToExceedTax), ("Not to exceed, with tax", quote.NotToExceedGross));
        flow.Space(12);
    }

    private static void Unpriced(Flow flow, Quote quote, UnitSystem units)
    {
        UnpricedTable(flow, "Not firm for these parts: they have no price yet and are not in the sums above.", quote.Unpriced);
        UnpricedTable(flow, "Inspection may add these parts, which have no price yet: the sum not to be exceeded does not hold them.", quote.UnpricedOnCondition);
        if (quote.UnpricedOil is { } oil)
        {
            flow.Paragraph(new Span($"Not firm for the oil: {QuantityText.Show(oil, units)} go in, and it has no price yet.", TextStyle.Pencil));
            flow.Space(8);
        }
    }

    private static void UnpricedTable(Flow flow, string words, ImmutableArray<NeedLine> lines)
    {
        if (lines.IsEmpty)
            return;
        flow.Paragraph(keepWithNext: true, new Span(words, TextStyle.Pencil));
        flow.Table([new(1), new(120, Fixed: true), new(60, Right: true, Fixed: true)], ["part", "number", "count"], lines.Select(l => (ImmutableArray<Cell>)[Capital(l.Name), l.Number ?? "not sold by the maker", l.Count.ToString(CultureInfo.InvariantCulture)]));
        flow.Space(12);
    }

    private static void Answer(Flow flow, QuoteSheetInput input)
    {
        var inner = new Flow(flow.Width);
        inner.Heading("Your answer", "one tick, please");
        var tag = new Tag(TagKind.Table);
        ImmutableArray<Column> columns = [new(14, Fixed: true), new(1)];
        string[] answers =
        [
            input.Quote.OnCondition.IsEmpty ? "Yes: do the work of the firm part." : "Yes: do the work of the firm part, and what inspection asks for up to the sum not to be exceeded.",
            .. input.Quote.OnCondition.IsEmpty ? (string[])[] : ["Yes to the firm part only: ask again before anything on condition."],
            "No: send the tool back unrepaired.",
            "No: retire the tool.",
        ];
        foreach (var answer in answers)
            inner.Row(tag, columns, [new Cell.Tick(), answer], rule: null);
        inner.Add(new SignaturePiece(flow.Width, ("name", 1.2), ("signature", 1.4), ("date", 0.8)));
        inner.Space(6);
        foreach (var term in input.Terms.Append("The work is done after your yes. A tool that cannot be proven is not released; you are told before further cost arises."))
            inner.Paragraph(new Span(SheetText.Sentence(term), TextStyle.Small));
        flow.Columns(0, double.MaxValue, (1, f =>
        {
            foreach (var piece in inner.Pieces())
                f.Add(piece);
        }
        ));
    }

    private static string TaxWords(Quote quote) => "tax at " + SheetText.Percent(quote.Settings.TaxRate);

    private static string Quantity(QuoteLine line) => line.Quantity.ToString("#,##0.###", CultureInfo.InvariantCulture) + (line.Unit.Length > 0 ? " " + line.Unit : "");

    private static string Bare(Money money) => money.Rounded().Amount.ToString("#,##0.00", CultureInfo.InvariantCulture);

    private static string Amount(Money money) => money.Rounded().ToString();

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
