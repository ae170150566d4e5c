namespace Ramwright.App.Web.Parts;

/// <summary>Words of a model made into a sentence.</summary>
public static class Sentence
{
    /// <summary>First letter large, a full stop at the end.</summary>
    public static string Of(string text)
    {
        var words = Head(text.Trim());
        return words.Length == 0 || words[^1] is '.' or '!' or '?' or '…' ? words : words + ".";
    }

    /// <summary>First letter small, to follow other words; an abbreviation or a name such as 'O-ring' keeps its own.</summary>
    public static string Tail(string text) => text.Length < 2 || char.IsUpper(text[1]) || text[1] == '-' ? text : char.ToLowerInvariant(text[0]) + text[1..];

    /// <summary>First letter large, no full stop.</summary>
    public static string Head(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
