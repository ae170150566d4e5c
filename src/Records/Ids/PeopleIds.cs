using System.Diagnostics.CodeAnalysis;

namespace Ramwright.Records.Ids;

/// <summary>A person who signs: a short name of lower-case letters, such as <c>ada-fenn</c>.</summary>
public readonly record struct PersonId : IRecordId<PersonId>
{
    private PersonId(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.SlugForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static PersonId Parse(string text) => IdText.Checked<PersonId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out PersonId id)
    {
        id = IdText.IsSlug(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}

/// <summary>A customer, such as <c>eelmarsh-lines</c>.</summary>
public readonly record struct CustomerId : IRecordId<CustomerId>
{
    private CustomerId(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.SlugForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static CustomerId Parse(string text) => IdText.Checked<CustomerId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out CustomerId id)
    {
        id = IdText.IsSlug(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}

/// <summary>A lot: tools that came in together, such as <c>L-0012</c>.</summary>
public readonly record struct LotId : IRecordId<LotId>
{
    private LotId(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.PlateForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static LotId Parse(string text) => IdText.Checked<LotId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out LotId id)
    {
        id = IdText.IsPlate(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}
