using System.Collections.Immutable;
using System.Globalization;

namespace Ramwright.Metrology.Input.Tables;

/// <summary>Gathers what is wrong in one file; keeps the first 200 and counts the rest.</summary>
public sealed class MistakeList(string file)
{
    private const int Cap = 200;
    private readonly ImmutableArray<Mistake>.Builder _mistakes = ImmutableArray.CreateBuilder<Mistake>();
    private int _more;

    public bool IsEmpty => _mistakes.Count == 0;

    /// <summary>Adds a mistake at a place of a line; a length of zero means the whole line.</summary>
    public void Add(TextLine line, int column, int length, string code, string what, string mend)
    {
        if (_mistakes.Count >= Cap)
            _more++;
        else
            _mistakes.Add(new(new(file, line.Number, column, length), what, mend, code) { Excerpt = line.Shown });
    }

    public void Add(TextLine line, Field field, string code, string what, string mend) => Add(line, field.Column, field.Length, code, what, mend);

    /// <summary>Adds a mistake about the file as a whole.</summary>
    public void AddWhole(string code, string what, string mend) => _mistakes.Add(new(new(file, 1, 1, 0), what, mend, code));

    /// <summary>All of them in the order of the text, and a last one that counts those beyond the cap.</summary>
    public ImmutableArray<Mistake> InOrder()
    {
        var inOrder = _mistakes.OrderBy(m => m.At.Line).ThenBy(m => m.At.Column).ToList();
        if (_more > 0)
        {
            inOrder.Add(new(inOrder[^1].At, string.Create(CultureInfo.InvariantCulture, $"{_more} more mistakes stand in this file"),
                "mend those shown and read the file again", "too-many-mistakes"));
        }
        return [.. inOrder];
    }
}
