namespace Ramwright.Metrology.Input.Tables;

/// <summary>A line of a text with its 1-based number.</summary>
public readonly record struct TextLine(int Number, string Text)
{
    /// <summary>Blank, or a comment that starts with <c>#</c>.</summary>
    public bool IsEmpty => Text.AsSpan().TrimStart() is [] or ['#', ..];

    /// <summary>The text as it may be shown: each control sign replaced by one blank, so that columns stay.</summary>
    public string Shown => Showable.Of(Text);
}

/// <summary>Text from outside made fit for a terminal or a page.</summary>
public static class Showable
{
    /// <summary>Control signs and halves of pairs replaced one for one by a blank.</summary>
    public static string Of(string text)
    {
        var unfit = text.AsSpan().ContainsAnyInRange('\0', '\u001f') || text.Any(c => char.IsControl(c) || char.IsSurrogate(c) || IsDirection(c));
        return unfit ? string.Create(text.Length, text, static (to, from) =>
        {
            for (var i = 0; i < to.Length; i++)
                to[i] = char.IsControl(from[i]) || char.IsSurrogate(from[i]) || IsDirection(from[i]) ? ' ' : from[i];
        }) : text;
    }

    /// <summary>The same, cut after 40 signs.</summary>
    public static string Short(string text) => text.Length <= 40 ? Of(text) : Of(text[..39]) + "…";

    // Marks that turn the direction of writing could make a line read other than it is.
    private static bool IsDirection(char c) => c is >= '\u200e' and <= '\u200f' or >= '\u202a' and <= '\u202e' or >= '\u2066' and <= '\u2069';
}
