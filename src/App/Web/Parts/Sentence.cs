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

    /// <summary>First letter large, no full stop.</summary>
    public static string Head(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
