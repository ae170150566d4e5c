using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Connections;

/// <summary>The words of a connection behind its kind: a place, then clauses, each a name and the words up to the next name.</summary>
internal sealed class Clauses(List<Word> words, MistakeList mistakes)
{
    private readonly Dictionary<string, (Word Name, List<Word> Values)> _found = new(StringComparer.Ordinal);
    private int _next = 1;

    public MistakeList Mistakes => mistakes;

    public Word Kind => words[0];

    public bool Has(string clause) => _found.ContainsKey(clause);

    /// <summary>The next word as the place of the device; null with a mistake added.</summary>
    public Word? Place(string wanted)
    {
        if (_next < words.Count && words[_next].Text.Length > 0)
            return words[_next++];
        Wrong(Kind, ConnectionCodes.BadPlace, "nothing says where the device is", $"write behind {Kind.Text} {wanted}");
        return null;
    }

    /// <summary>The next word, if it looks as wanted, before any clause.</summary>
    public Word? Take(Func<string, bool> wanted) => _next < words.Count && wanted(words[_next].Text) ? words[_next++] : null;

    /// <summary>Puts the word taken last back.</summary>
    public Clauses Back()
    {
        _next--;
        return this;
    }

    /// <summary>Gathers all clauses, and tells unknown and doubled names.</summary>
    public void ReadAll(IReadOnlyList<string> known)
    {
        List<Word>? values = null;
        var room = 0;
        var told = false; // an unknown name is told once, not with each of its words
        for (; _next < words.Count; _next++)
        {
            var word = words[_next];
            if (word.Field.Quoted || !known.Contains(word.Text, StringComparer.Ordinal))
            {
                if (values is not null && values.Count < room && !told)
                {
                    values.Add(word);
                    continue;
                }
                if (!told)
                    Unknown(word, known);
                told = true;
                continue;
            }
            (values, told, room) = ([], false, IsPair(word.Text) ? 2 : 1);
            if (!_found.TryAdd(word.Text, (word, values)))
                Wrong(word, ConnectionCodes.DuplicateClause, $"'{word.Text}' stands twice", "keep one of the two");
        }
        foreach (var (name, given) in _found.Values.Where(c => c.Values.Count == 0))
            Wrong(name, ConnectionCodes.MissingValue, $"nothing stands behind '{name.Text}'", $"write its value behind {name.Text}, or take it out");
    }

    public void Missing(string clause, string mend) => Wrong(Kind, ConnectionCodes.MissingClause, $"'{clause}' is missing", mend);

    public void Wrong(Word word, string code, string what, string mend) => mistakes.Add(word.Line, word.Field, code, what, mend);

    public void Wrong(string clause, string code, string what, string mend) => Wrong(_found[clause].Name, code, what, mend);

    /// <summary>The words behind a clause; empty when it does not stand there.</summary>
    public IReadOnlyList<Word> Values(string clause) => _found.TryGetValue(clause, out var found) ? found.Values : [];

    /// <summary>The one word behind a clause; null when there is none.</summary>
    public Word? Single(string clause) => Values(clause) is [var word] ? word : null;

    /// <summary>A short text behind a clause.</summary>
    public string? Text(string clause, int longest)
    {
        if (Single(clause) is not { } word)
            return null;
        if (word.Text.Length is > 0 && word.Text.Length <= longest && !word.Text.Any(char.IsControl))
            return word.Text;
        Wrong(word, ReadingCodes.LineTooLong, $"the text behind '{clause}' has {word.Text.Length} signs, or a sign that cannot be sent", $"write 1 to {longest} signs");
        return null;
    }

    /// <summary>One of a few words behind a clause.</summary>
    public T? OneOf<T>(string clause, params (string Word, T Value)[] choices)
        where T : struct
    {
        if (Single(clause) is not { } word)
            return null;
        foreach (var (text, value) in choices)
        {
            if (text == word.Text)
                return value;
        }
        Wrong(word, ConnectionCodes.ClauseConflict, $"'{Showable.Short(word.Text)}' is nothing that '{clause}' takes", $"write {string.Join(", ", choices.Select(c => c.Word))}");
        return null;
    }

    /// <summary>A plain number behind a clause, within its limits.</summary>
    public double? Number(string clause, double least, double most)
    {
        if (Single(clause) is not { } word)
            return null;
        return Good(QuantityReader.ReadPlain(word.Text), word, word.Field.Column, word.Text.Length) is { } value ? Within(word, value, value, least, most, "") : null;
    }

    /// <summary>A time behind a clause, limits in seconds.</summary>
    public TimeSpan? Time(string clause, double leastSeconds, double mostSeconds) =>
        Quantity(clause, Dimension.Time, leastSeconds, mostSeconds, "s") is { } seconds ? TimeSpan.FromTicks((long)Math.Round(seconds * TimeSpan.TicksPerSecond)) : null;

    /// <summary>A value with its unit behind a clause, in SI, within its limits.</summary>
    public double? Quantity(string clause, Dimension dimension, double least, double most, string unit)
    {
        if (Values(clause) is not [var first, ..] values)
            return null;
        var last = values[^1];
        if (last.Line != first.Line || last.Field.Quoted || first.Field.Quoted)
        {
            Wrong(first, ReadingCodes.BadNumber, $"the value behind '{clause}' is parted or quoted", "write number and unit on one line, without quotes");
            return null;
        }
        var text = first.Line.Text[(first.Field.Column - 1)..(last.Field.Column - 1 + last.Field.Length)];
        return Good(QuantityReader.Read(text, dimension), first, first.Field.Column, text.Length) is { } si ? Within(first, si, si, least, most, unit) : null;
    }

    /// <summary>Whether two words may stand behind a clause: a number and its unit, or how registers are counted and which.</summary>
    private static bool IsPair(string clause) => clause is "every" or "within" or "lag" or "begins" or "ends" or "full" or "input" or "holding";

    private double? Good(TextReading<double> reading, Word word, int column, int length)
    {
        if (reading is TextReading<double>.Good good)
            return good.Value;
        var fault = ((TextReading<double>.Bad)reading).Fault;
        mistakes.Add(word.Line, column + Math.Min(fault.Start, length - 1), Math.Max(1, fault.Length), fault.Code, fault.What, fault.Mend);
        return null;
    }

    private double? Within(Word word, double value, double si, double least, double most, string unit)
    {
        if (si >= least && si <= most)
            return value;
        Wrong(word, "out-of-range", string.Create(CultureInfo.InvariantCulture, $"{value:g6} {unit} is outside {least:g6} to {most:g6} {unit}").Replace("  ", " ", StringComparison.Ordinal), "write the value that is meant");
        return null;
    }

    private void Unknown(Word word, IReadOnlyList<string> known)
    {
        var near = NearName.Find(word.Text, known);
        Wrong(word, ConnectionCodes.UnknownClause, $"'{Showable.Short(word.Text)}' is nothing that {Kind.Text} takes", near is not null ? $"write {near}" : known.Count == 0 ? "take it out" : $"write one of {string.Join(", ", known)}");
    }
}
