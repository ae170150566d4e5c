namespace Ramwright.Metrology.Input;

/// <summary>A stretch of a text that remembers where it stands, so that a fault can point to it.</summary>
internal readonly record struct Slice(string Whole, int Start, int Length)
{
    public string Text => Whole.Substring(Start, Length);

    public Slice Part(int start, int length) => new(Whole, Start + start, length);

    public Slice Trim()
    {
        var (from, to) = (Start, Start + Length);
        while (from < to && char.IsWhiteSpace(Whole[from]))
            from++;
        while (to > from && char.IsWhiteSpace(Whole[to - 1]))
            to--;
        return new(Whole, from, to - from);
    }
}
