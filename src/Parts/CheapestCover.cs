using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>The cheapest way to buy what is needed.</summary>
public static class CheapestCover
{
    /// <summary>Covers a need by kits (any number of each) and loose parts, at the least price; at equal price by fewer pieces.</summary>
    public static Cover Of(ServiceModel model, ImmutableArray<NeedLine> needs, CoverOptions? options = null) =>
        throw new NotSupportedException("Signature only; the body follows.");
}
