using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>What the house charges.</summary>
/// <param name="TaxRate">0.19 is 19 %.</param>
/// <param name="ValidFor">How long a quote holds.</param>
public sealed record PriceSettings(Money LabourPerHour, double TaxRate, TimeSpan ValidFor);

/// <summary>A quote: a firm part, what may come on top by inspection, and the sum that is never exceeded without asking again.</summary>
public sealed record Quote
{
    public required ImmutableArray<QuoteLine> Firm { get; init; }
    public required ImmutableArray<ConditionalLine> OnCondition { get; init; }

    /// <summary>Firm part before tax.</summary>
    public required Money FirmNet { get; init; }
    public required Money FirmTax { get; init; }
    public required Money FirmGross { get; init; }

    /// <summary>Firm part and all that every inspection may add at once, before tax; rounded up to a whole unit of the currency. A part that two lines name is in it once; a spare that two lines count on is in it for the second.</summary>
    public required Money NotToExceedNet { get; init; }
    public required Money NotToExceedTax { get; init; }
    public required Money NotToExceedGross { get; init; }

    /// <summary>Firm part plus each conditional line times its chance, before tax; a line without a chance is left out.</summary>
    public required Money ExpectedNet { get; init; }
    public required PriceSettings Settings { get; init; }

    /// <summary>Parts without a price: the quote is not firm for them.</summary>
    public ImmutableArray<NeedLine> Unpriced { get; init; } = [];

    /// <summary>Parts without a price that an inspection may add: the not-to-exceed does not hold them.</summary>
    public ImmutableArray<NeedLine> UnpricedOnCondition { get; init; } = [];

    /// <summary>Oil that goes in but has no price per litre.</summary>
    public Volume? UnpricedOil { get; init; }

    /// <summary>What the firm part buys, with left-overs and contents that must not be used.</summary>
    public required Cover Cover { get; init; }
}

/// <summary>Kind of a quote line.</summary>
public enum QuoteLineKind { Labour, Kit, Part, Oil, Proof }

/// <summary>A line of the firm part; its price is quantity times unit price, rounded half to even to two places.</summary>
/// <param name="Quantity">As printed: hours and litres to 0.01 and 0.001, pieces whole.</param>
/// <param name="Unit"><c>h</c>, <c>l</c> or <c>pc</c>.</param>
public sealed record QuoteLine(QuoteLineKind Kind, string Text, string? Number, decimal Quantity, string Unit, Money UnitPrice, Money Price);

/// <summary>A line that applies only when an inspection turns out badly.</summary>
/// <param name="Inspection">The inspection, or the first of several on the part that come to the same.</param>
/// <param name="Chance">0 to 1, where the model knows it.</param>
public sealed record ConditionalLine(InspectionId Inspection, NodeId Part, string Text, double? Chance, Money Parts, Money Labour)
{
    public Money Price => Parts + Labour;
}
