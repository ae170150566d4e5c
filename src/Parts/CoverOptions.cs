namespace Ramwright.Parts;

/// <summary>How a cover is searched.</summary>
public sealed record CoverOptions
{
    /// <summary>The currency to buy in, ISO 4217; prices in another one count as unknown. Null takes the first price's of the model, EUR when there is none.</summary>
    public string? Currency { get; init; }

    /// <summary>Search nodes after which the best cover so far is the answer, with its gap; 1 or more.</summary>
    public int NodeLimit { get; init; } = 100_000;
}
