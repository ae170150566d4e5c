using Ramwright.Metrology.Quantities;

namespace Ramwright.Parts;

/// <summary>The customer's answer to a quote.</summary>
/// <param name="Accepted">Yes or no.</param>
/// <param name="By">Who answered, in the customer's house.</param>
/// <param name="How">By what way: by telephone, in writing, at the counter.</param>
/// <param name="Limit">The sum before tax that the customer allows; null is the quote's own not-to-exceed. Means nothing on a no.</param>
public sealed record QuoteAnswer(bool Accepted, string By, string How, DateTimeOffset At, Money? Limit)
{
    /// <summary>Whether work that brings the job to <paramref name="net"/> before tax may go on without asking again.</summary>
    public bool Covers(Quote quote, Money net) => Accepted && net.Amount <= (Limit ?? quote.NotToExceedNet).Amount
        && net.Currency == quote.NotToExceedNet.Currency;
}
