using System.Globalization;

namespace Ramwright.Metrology.Quantities;

/// <summary>An amount of money in one currency (ISO 4217 code). Amounts of different currencies do not add.</summary>
public readonly record struct Money
{
    public Money(decimal amount, string currency)
    {
        ArgumentNullException.ThrowIfNull(currency);
        Currency = currency.Length == 3 && currency.All(char.IsAsciiLetterUpper)
            ? currency
            : throw new ArgumentException($"'{currency}' is no currency code; write three capitals as in ISO 4217, such as EUR.", nameof(currency));
        Amount = amount;
    }

    public decimal Amount { get; }

    public string Currency { get; }

    public static Money operator +(Money a, Money b) => new(a.Amount + b.Amount, Same(a, b));

    public static Money operator -(Money a, Money b) => new(a.Amount - b.Amount, Same(a, b));

    public static Money operator *(decimal factor, Money m) => new(factor * m.Amount, m.Currency);

    public static Money Zero(string currency) => new(0, currency);

    /// <summary>Rounded half to even to two places, as it is shown and invoiced.</summary>
    public Money Rounded() => new(decimal.Round(Amount, 2, MidpointRounding.ToEven), Currency);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Amount:#,##0.00} {Currency}");

    private static string Same(Money a, Money b) => a.Currency == b.Currency
        ? a.Currency
        : throw new InvalidOperationException($"{a} and {b} are of two currencies and do not add.");
}
