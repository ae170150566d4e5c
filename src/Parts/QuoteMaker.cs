using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>Makes a quote from the plans.</summary>
public static class QuoteMaker
{
    /// <summary>The quote for stripping, rebuilding, setting and proving; without a plan (a level 0 or 1 model) for setting and proving alone.</summary>
    public static Quote Make(ServiceModel model, StripPlan? strip, RebuildPlan? rebuild, PriceSettings settings, QuoteOptions? options = null) =>
        throw new NotSupportedException("Signature only; the body follows.");
}
