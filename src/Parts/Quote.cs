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

    /// <summary>Firm part and every conditional line together, before tax; rounded up to a whole unit.</summary>
    public required Money NotToExceedNet { get; init; }
    public required Money NotToExceedTax { get; init; }
    public required Money NotToExceedGross { get; init; }

    /// <summary>Firm part plus each conditional line times its chance, before tax.</summary>
    public required Money ExpectedNet { get; init; }
    public required PriceSettings Settings { get; init; }

    /// <summary>Parts without a price: the quote is not firm for them.</summary>
    public ImmutableArray<NeedLine> Unpriced { get; init; } = [];
}

/// <summary>Kind of a quote line.</summary>
public enum QuoteLineKind { Labour, Kit, Part, Oil, Proof }

/// <summary>A line of the firm part.</summary>
public sealed record QuoteLine(QuoteLineKind Kind, string Text, string? Number, double Quantity, string Unit, Money UnitPrice, Money Price);

/// <summary>A line that applies only when an inspection turns out badly.</summary>
/// <param name="Chance">0 to 1, where the model knows it.</param>
public sealed record ConditionalLine(InspectionId Inspection, NodeId Part, string Text, double? Chance, Money Parts, Money Labour)
{
    public Money Price => Parts + Labour;
}
