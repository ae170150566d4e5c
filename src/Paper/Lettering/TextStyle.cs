using Ramwright.Paper.Drawing;

namespace Ramwright.Paper.Lettering;

/// <summary>How words are set on paper. Size and leading in points.</summary>
public sealed record TextStyle(bool Bold, double Size, double Leading, Tint Tint)
{
    public static readonly TextStyle Title = new(true, 21, 25, Tint.Ink);
    public static readonly TextStyle Answer = new(true, 18, 22, Tint.Ink);
    public static readonly TextStyle Heading = new(true, 10.5, 14, Tint.Ink);
    public static readonly TextStyle Body = new(false, 8.8, 12.2, Tint.Ink);
    public static readonly TextStyle Strong = new(true, 8.8, 12.2, Tint.Ink);
    public static readonly TextStyle Quiet = new(false, 8.8, 12.2, Tint.Quiet);
    public static readonly TextStyle Pencil = new(true, 8.8, 12.2, Tint.Pencil);
    public static readonly TextStyle Small = new(false, 7.4, 10.2, Tint.Quiet);
    public static readonly TextStyle SmallInk = new(false, 7.4, 10.2, Tint.Ink);
    public static readonly TextStyle Label = new(false, 7, 9.4, Tint.Quiet);
    public static readonly TextStyle Value = new(true, 9.2, 11.8, Tint.Ink);
    public static readonly TextStyle Step = new(true, 10, 13, Tint.Ink);
    public static readonly TextStyle Sum = new(true, 13, 17, Tint.Ink);

    public Typeface Face => Bold ? Typeface.Bold : Typeface.Regular;
}

/// <summary>Words in one style.</summary>
public sealed record Span(string Words, TextStyle Style)
{
    /// <summary>Ends the line.</summary>
    public static readonly Span Break = new("\n", TextStyle.Body);

    public static implicit operator Span(string words) => new(words, TextStyle.Body);
}
