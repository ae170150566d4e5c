using System.Diagnostics.CodeAnalysis;

namespace Ramwright.Records.Ids;

/// <summary>An id that people read and type: a short text with a rule, checked once when it comes in.</summary>
public interface IRecordId<TSelf> : IParsable<TSelf>
    where TSelf : struct, IRecordId<TSelf>
{
    /// <summary>The id as it is written.</summary>
    string Value { get; }

    /// <summary>What a valid id looks like, for the person who typed another: "two capitals, a hyphen, four digits".</summary>
    static abstract string Form { get; }

    /// <summary>Takes a text that keeps the rule of <see cref="Form"/>; false otherwise. Never throws.</summary>
    static abstract bool TryParse([NotNullWhen(true)] string? text, out TSelf id);

    static TSelf IParsable<TSelf>.Parse(string s, IFormatProvider? provider) => TSelf.TryParse(s, out var id)
        ? id
        : throw new FormatException($"'{s}' is no {typeof(TSelf).Name}; write {TSelf.Form}.");

    static bool IParsable<TSelf>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out TSelf result) => TSelf.TryParse(s, out result);
}

/// <summary>The two shapes that most ids share.</summary>
internal static class IdText
{
    /// <summary>Longest id of any kind, in characters.</summary>
    public const int Longest = 40;

    public const string SlugForm = "1 to 40 lower-case letters and digits, with single hyphens between";
    public const string PlateForm = "1 to 40 letters, digits, hyphens, dots or slashes, as stamped on the thing";

    public static bool IsSlug([NotNullWhen(true)] string? text) =>
        text is { Length: > 0 and <= Longest }
        && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-')
        && text[0] != '-' && text[^1] != '-' && !text.Contains("--", StringComparison.Ordinal);

    public static bool IsPlate([NotNullWhen(true)] string? text) =>
        text is { Length: > 0 and <= Longest }
        && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '/')
        && text.Any(char.IsAsciiLetterOrDigit);

    public static T Checked<T>(string text)
        where T : struct, IRecordId<T> => T.TryParse(text, out var id)
        ? id
        : throw new FormatException($"'{text}' is no {typeof(T).Name}; write {T.Form}.");
}
