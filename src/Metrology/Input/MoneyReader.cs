using System.Globalization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Metrology.Input;

/// <summary>Reads amounts of money: <c>12.40 EUR</c>, or a price for a litre, <c>18.50 EUR/l</c>. The currency is its ISO 4217 code.</summary>
public static class MoneyReader
{
    private const decimal Largest = 1e9m;

    public static TextReading<Money> Read(string text) => Read(text, per: "");

    /// <summary>A price for one litre.</summary>
    public static TextReading<Money> ReadPerLitre(string text) => Read(text, per: "/l");

    private static TextReading<Money> Read(string text, string per)
    {
        ArgumentNullException.ThrowIfNull(text);
        var all = new Slice(text, 0, text.Length).Trim();
        return QuantityReader.ReadNumber(all, $"such as 12.40 EUR{per}").Then(n =>
        {
            var unit = n.Rest.Text.Replace(" ", "", StringComparison.Ordinal);
            if (unit.Length == 0)
                return QuantityReader.Bad<Money>(all, $"'{all.Text}' has no currency", $"write the currency after it, such as {n.Number.Text} EUR{per}", "missing-unit");
            if (!unit.EndsWith(per, StringComparison.OrdinalIgnoreCase))
                return QuantityReader.Bad<Money>(n.Rest, $"'{n.Rest.Text}' does not say that the price is for a litre", $"write it so: {n.Number.Text} EUR{per}", "unknown-unit");
            var currency = unit[..^per.Length];
            if (currency.Length != 3 || !currency.All(char.IsAsciiLetterUpper))
                return QuantityReader.Bad<Money>(n.Rest, $"'{n.Rest.Text}' is no currency code", "write three capitals as in ISO 4217, such as EUR, GBP or USD", "bad-currency");
            if (!decimal.TryParse(n.Number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var amount) || amount is < 0 or > Largest)
                return QuantityReader.Bad<Money>(n.Number, $"{n.Number.Text} is outside 0 to 1000000000 {currency}", "write the price that is meant", "out-of-range");
            return new TextReading<Money>.Good(new Money(amount, currency));
        });
    }
}
