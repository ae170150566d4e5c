using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Ramwright.Records.Ids;

/// <summary>The number of an entry in the ledger: 1, 2, 3 ... without gaps. Zero stands before the first.</summary>
public readonly record struct EntryNumber(long Value) : IComparable<EntryNumber>
{
    public static EntryNumber None => default;

    public int CompareTo(EntryNumber other) => Value.CompareTo(other.Value);

    public static bool operator <(EntryNumber a, EntryNumber b) => a.Value < b.Value;
    public static bool operator >(EntryNumber a, EntryNumber b) => a.Value > b.Value;
    public static bool operator <=(EntryNumber a, EntryNumber b) => a.Value <= b.Value;
    public static bool operator >=(EntryNumber a, EntryNumber b) => a.Value >= b.Value;

    /// <summary>Takes a number of 0 or more in plain digits.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out EntryNumber number)
    {
        var read = long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value);
        number = new(value);
        return read;
    }

    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Made when a form is drawn and sent with it: the same form sent twice is one entry.</summary>
public readonly record struct SubmitToken(Guid Value)
{
    public static SubmitToken New() => new(Guid.NewGuid());

    /// <summary>Takes a token as <see cref="ToString"/> writes it; an empty one is none.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out SubmitToken token)
    {
        var read = Guid.TryParse(text, out var value) && value != Guid.Empty;
        token = read ? new(value) : default;
        return read;
    }

    public override string ToString() => Value.ToString("D", CultureInfo.InvariantCulture);
}
