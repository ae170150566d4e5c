using System.Globalization;
using System.Text;
using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Text;

/// <summary>Reads the number of one cell as a pressure, or says what is wrong with it.</summary>
/// <param name="name">What the column is called in a mistake: <c>peak_bar</c>.</param>
/// <param name="unit">Null while the unit is unknown, itself a mistake reported elsewhere: then the number is read but not judged.</param>
internal sealed class PeakCell(string name, ReadingUnit? unit, Area? ramArea, Force heldBack, MistakeList mistakes)
{
    private const double LeastBar = 0.1;
    private const double MostBar = 2000;
    private (DecimalMark Mark, int Line)? _first;

    /// <summary>The decimal mark asked for or settled by the columns; null lets the first number with a mark settle it.</summary>
    public DecimalMark? Settled { get; init; }

    /// <summary>Whether points and commas may both stand before decimals, as in what is typed by hand.</summary>
    public bool EitherMark { get; init; }

    /// <summary>The pressure, or null with a mistake added (or none when the unit is unknown).</summary>
    public Pressure? Read(TextLine line, Field cell)
    {
        if (NumberWords.IsMissing(cell.Text))
            return Wrong(line, cell, ReadingCodes.MissingReading, cell.Text.Length == 0 ? $"{name} is empty" : $"{name} is '{Showable.Short(cell.Text)}', which is no reading", "write the peak of this run, or take the line out if there was no such run");
        if (NumberWords.IsNotFinite(cell.Text))
            return Wrong(line, cell, ReadingCodes.NotFinite, $"{name} is '{Showable.Short(cell.Text)}', which is no finite number", "write the peak as the device showed it; a device at the end of its range cannot prove this run");
        if (Number(line, cell) is not { } value)
            return null;
        if (value < 0)
            return Wrong(line, cell, ReadingCodes.NegativeReading, $"{name} is {Showable.Short(cell.Text)}, below zero; a peak is above", "zero the device and make the run again; if the sign is a slip, take it away");
        return unit is { } known && (known != ReadingUnit.Kilonewton || ramArea is not null) ? Judged(line, cell, value, known) : null;
    }

    private Pressure? Judged(TextLine line, Field cell, double value, ReadingUnit known)
    {
        var pressure = known.ToPressure(value, ramArea, heldBack);
        if (pressure is { Bar: >= LeastBar and <= MostBar } good)
            return good;
        var bar = pressure is { } p ? string.Create(CultureInfo.InvariantCulture, $"{p.Bar:0.###} bar") : "more than any pressure";
        return Wrong(line, cell, ReadingCodes.AbsurdValue,
            $"{name} is {Showable.Short(cell.Text)} {known.Symbol()}, that is {bar}; a peak lies between 0.1 and 2000 bar", Likelier(value, known) is { } other
                ? $"check the unit: in {other.Symbol()} the value would be usual"
                : "check the value and the unit; take the line out only if there was no such run");
    }

    /// <summary>The unit in which a value would be a usual peak (100 to 1000 bar), where exactly one is.</summary>
    private ReadingUnit? Likelier(double value, ReadingUnit known)
    {
        var usual = Enum.GetValues<ReadingUnit>().Where(u => u != known && u.ToPressure(value, ramArea, heldBack) is { Bar: >= 100 and <= 1000 }).ToList();
        return usual.Count == 1 ? usual[0] : null;
    }

    private double? Number(TextLine line, Field cell)
    {
        var text = cell.Text;
        var points = text.Count(c => c == '.');
        var commas = text.Count(c => c == ',');
        if (points + commas > 1)
        {
            return IsNumber(text.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal), out _)
                ? WrongNumber(line, cell, $"{name} is '{Showable.Short(text)}': more than one point or comma in one number", "leave the mark between thousands out")
                : BadNumber(line, cell);
        }
        if (!IsNumber(text.Replace(',', '.'), out var value))
            return BadNumber(line, cell);
        if (unit is ReadingUnit.Psi or ReadingUnit.Kilopascal && IsGrouped(text))
            return WrongNumber(line, cell, $"{name} is '{Showable.Short(text)}': its mark could stand before decimals or between thousands", "leave the mark between thousands out, or write the decimals with one or two places");
        return points + commas == 1 && !MarkHolds(line, cell, commas == 1 ? DecimalMark.Comma : DecimalMark.Point) ? null : value;
    }

    private bool MarkHolds(TextLine line, Field cell, DecimalMark mark)
    {
        if (EitherMark)
            return true;
        _first ??= (mark, line.Number);
        if (mark == (Settled ?? _first.Value.Mark))
            return true;
        var (here, there) = mark == DecimalMark.Comma ? ("comma", "point") : ("point", "comma");
        var source = Settled is null ? $"line {_first.Value.Line} has" : "the file is read with";
        mistakes.Add(line, cell, ReadingCodes.MixedDecimal, $"{name} is '{Showable.Short(cell.Text)}' with a decimal {here}; {source} a decimal {there}", "write all numbers of a file with the same decimal mark");
        return false;
    }

    private double? BadNumber(TextLine line, Field cell)
    {
        var mended = Mended(cell.Text);
        return WrongNumber(line, cell, $"{name} is '{Showable.Short(cell.Text)}', which is no number", mended ?? "write digits with a point or a comma before the decimals; the unit stands in the header");
    }

    /// <summary>Letters that were meant as digits, and what the number then is; null when that makes none.</summary>
    private static string? Mended(string text)
    {
        if (text.Length is 0 or > 20)
            return null;
        var mended = new StringBuilder(text.Length);
        string? first = null;
        for (var i = 0; i < text.Length; i++)
        {
            var (digit, called) = text[i] switch
            {
                'O' or 'o' => ('0', "the letter O"),
                'l' => ('1', "a small letter L"),
                'I' => ('1', "a capital letter i"),
                '\u2212' => ('-', "a long dash"),
                _ => (text[i], null),
            };
            mended.Append(digit);
            if (called is not null && first is null)
                first = $"sign {i + 1} is {called}";
        }
        if (first is not null && IsNumber(mended.ToString().Replace(',', '.'), out _))
            return $"{first}; write {mended}";
        var head = text.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or ',').Count();
        if (head > 0 && ReadingUnits.Find(text[head..].Trim()) is { } written)
            return $"leave {written.Symbol()} to the header; write {text[..head]}";
        return text.Any(char.IsWhiteSpace) && IsNumber(string.Concat(text.Where(c => !char.IsWhiteSpace(c))).Replace(',', '.'), out _) ? "take the blank out, or separate columns with ; or a tab" : null;
    }

    private double? WrongNumber(TextLine line, Field cell, string what, string mend)
    {
        mistakes.Add(line, cell, ReadingCodes.BadNumber, what, mend);
        return null;
    }

    private Pressure? Wrong(TextLine line, Field cell, string code, string what, string mend)
    {
        mistakes.Add(line, cell, code, what, mend);
        return null;
    }

    private static bool IsGrouped(string text) => text.Split(',', '.') is [{ Length: >= 1 and <= 3 } head, { Length: 3 } tail] && head.All(char.IsAsciiDigit) && tail.All(char.IsAsciiDigit) && head != "0";

    private static bool IsNumber(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value) && double.IsFinite(value) && text.Any(char.IsAsciiDigit);
}
