using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>Makes a quote from the plans.</summary>
/// <remarks>
/// The firm part is labour at its likely time, what the plan renews under its cheapest cover, oil, and setting and proving. Each inspection on
/// the way that the model gives a bad outcome for becomes a conditional line at what it adds to the firm part. What the shop may damage
/// by its own way of working is the shop's risk and on no line. Each line is rounded half to even; sums add lines and round nothing.
/// </remarks>
public static class QuoteMaker
{
    /// <summary>The quote for stripping, rebuilding, setting and proving; without a plan (a level 0 or 1 model) for setting and proving alone.</summary>
    /// <remarks>All money is in the currency of the labour rate; parts priced in another count as unpriced.</remarks>
    public static Quote Make(ServiceModel model, StripPlan? strip, RebuildPlan? rebuild, PriceSettings settings, QuoteOptions? options = null)
    {
        if (settings.TaxRate is not (>= 0 and <= 1) || settings.LabourPerHour.Amount < 0)
            throw new ArgumentOutOfRangeException(nameof(settings), settings, "A tax rate is 0 to 1, a labour rate zero or more.");
        options ??= new();
        var currency = settings.LabourPerHour.Currency;
        var buying = options.Cover with { Currency = currency };
        var needs = strip is null ? [] : PartsNeed.Of(model, strip);
        var cover = CheapestCover.Of(model, needs, buying);
        var oil = rebuild?.OilFilled ?? Volume.FromMillilitres(0);
        var oilPrice = model.Fluid?.PricePerLitre is { } price && price.Currency == currency && price.Amount >= 0 ? price : (Money?)null;

        var firm = FirmLines.Of(model, strip, rebuild, settings, options, cover, oil, oilPrice);
        var conditional = strip is null ? new([], [], 0) : new ConditionalLines(model, strip, rebuild, settings, options, needs, cover).All();
        var zero = Money.Zero(currency);
        var firmNet = firm.Aggregate(zero, (sum, line) => sum + line.Price);
        var limit = new Money(decimal.Ceiling(firmNet.Amount + conditional.AllAtOnce), currency);
        return new()
        {
            Firm = firm,
            OnCondition = conditional.Lines,
            FirmNet = firmNet,
            FirmTax = Tax(firmNet, settings),
            FirmGross = firmNet + Tax(firmNet, settings),
            NotToExceedNet = limit,
            NotToExceedTax = Tax(limit, settings),
            NotToExceedGross = limit + Tax(limit, settings),
            ExpectedNet = (firmNet + conditional.Lines.Aggregate(zero, (sum, line) => sum + (decimal)(line.Chance ?? 0) * line.Price)).Rounded(),
            Settings = settings,
            Unpriced = cover.Unpriced,
            UnpricedOnCondition = conditional.Unpriced,
            UnpricedOil = oil.CubicMetres > 0 && oilPrice is null ? oil : null,
            Cover = cover,
        };
    }

    private static Money Tax(Money net, PriceSettings settings) => ((decimal)settings.TaxRate * net).Rounded();
}
