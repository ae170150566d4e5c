using System.Globalization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Metrology.Input;

/// <summary>
/// Reads quantities as people write them in files and options: <c>700 bar</c>, <c>679 bar .. 721 bar</c>, <c>85 N·m ± 5 %</c>,
/// <c>25 %</c>, <c>18.50 EUR/l</c>. The decimal sign is a point, no thousands separators, the unit is always there.
/// </summary>
public static class QuantityReader
{
    /// <summary>A number and a unit of the dimension asked for; the value in SI.</summary>
    public static TextReading<double> Read(string text, Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ReadPart(new Slice(text, 0, text.Length).Trim(), dimension);
    }

    /// <summary>A number and any unit known here, or none for a plain number; the number as it is written.</summary>
    public static TextReading<(double Number, Unit? Unit)> ReadAny(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ReadNumber(new Slice(text, 0, text.Length).Trim(), "such as 700 bar").Then(n => n.Rest.Text.Length == 0
            ? new TextReading<(double, Unit?)>.Good((n.Value, null))
            : UnitTable.Find(n.Rest.Text) is { } unit
                ? new TextReading<(double, Unit?)>.Good((n.Value, unit))
                : Bad<(double, Unit?)>(n.Rest, $"'{n.Rest.Text}' is no unit known here", UnitTable.FindInOtherCase(n.Rest.Text) is { } other ? $"write {other.Symbol}: capitals count in units" : "write a unit of the list in docs/reference/uncertainty-budget.md, or none for a plain number", "unknown-unit"));
    }

    /// <summary>A number and a unit, as a quantity of its own type.</summary>
    public static TextReading<T> Read<T>(string text, Dimension dimension)
        where T : struct, IQuantity<T> => Read(text, dimension).Map(T.FromSi);

    /// <summary>Two limits, <c>679 bar .. 721 bar</c>; a unit after the second only counts for both. Low before high, in SI.</summary>
    public static TextReading<(double Low, double High)> ReadWindow(string text, Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(text);
        var symbol = UnitTable.SymbolsOf(dimension)[0];
        var all = new Slice(text, 0, text.Length).Trim();
        var dots = text.IndexOf("..", StringComparison.Ordinal);
        if (dots < 0)
            return Bad<(double, double)>(all, $"'{all.Text}' is one value; two limits are wanted", $"write the lower and the upper limit with two dots between, such as 680 {symbol} .. 720 {symbol}", "bad-window");
        var low = new Slice(text, 0, dots).Trim();
        var high = new Slice(text, dots + 2, text.Length - dots - 2).Trim();
        return ReadPart(high, dimension).Then(top => ReadPart(WithUnitOf(low, high), dimension, low).Then(bottom => bottom < top
            ? new TextReading<(double, double)>.Good((bottom, top))
            : Bad<(double, double)>(all, $"the lower limit {low.Text} is not below the upper limit {high.Text}", "write the lower limit first", "bad-window")));
    }

    /// <summary>A value and its tolerance, <c>85 N·m ± 5 %</c> or <c>85 N·m ± 4 N·m</c> (also <c>+/-</c>); the tolerance as a share of the value, 0 when not given.</summary>
    public static TextReading<(double Value, double Share)> ReadWithTolerance(string text, Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (sign, width) = text.IndexOf('±', StringComparison.Ordinal) is >= 0 and var at ? (at, 1) : (text.IndexOf("+/-", StringComparison.Ordinal), 3);
        if (sign < 0)
            return Read(text, dimension).Map(v => (v, 0.0));
        var tolerance = new Slice(text, sign + width, text.Length - sign - width).Trim();
        return ReadPart(new Slice(text, 0, sign).Trim(), dimension).Then(value => ReadTolerance(tolerance, dimension, value).Then(share => share is >= 0 and < 1
            ? new TextReading<(double, double)>.Good((value, share))
            : Bad<(double, double)>(tolerance, $"a tolerance of {tolerance.Text} leaves nothing of the value", "write a tolerance smaller than the value, such as ± 5 %", "bad-tolerance")));
    }

    /// <summary>A share of a whole: <c>25 %</c> or <c>0.25</c>; no range is enforced.</summary>
    public static TextReading<double> ReadShare(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var all = new Slice(text, 0, text.Length).Trim();
        return ReadNumber(all, "such as 25 % or 0.25").Then(n => n.Rest.Text switch
        {
            "" => new TextReading<double>.Good(n.Value),
            "%" => new TextReading<double>.Good(n.Value / 100),
            var other => Bad<double>(n.Rest, $"'{other}' is no unit of a share", "write it with %, such as 25 %, or as a plain number such as 0.25", "unknown-unit"),
        });
    }

    /// <summary>A plain number without a unit.</summary>
    public static TextReading<double> ReadPlain(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ReadNumber(new Slice(text, 0, text.Length).Trim(), "such as 2.5").Then(n => n.Rest.Text.Length == 0
            ? new TextReading<double>.Good(n.Value)
            : Bad<double>(n.Rest, $"a plain number is wanted; '{n.Rest.Text}' follows it", $"write {n.Number.Text} alone", "unwanted-unit"));
    }

    private static TextReading<double> ReadTolerance(Slice text, Dimension dimension, double value) => text.Text.EndsWith('%')
        ? ReadNumber(text, "such as 5 %").Map(n => n.Value / 100)
        : ReadPart(text, dimension).Map(t => t / value);

    private static TextReading<double> ReadPart(Slice text, Dimension dimension, Slice? shown = null)
    {
        var symbols = UnitTable.SymbolsOf(dimension);
        var mark = shown ?? text;
        return ReadNumber(text, $"such as 12 {symbols[0]}").Then(n =>
        {
            var units = string.Join(", ", symbols);
            if (n.Rest.Text.Length == 0)
                return Bad<double>(mark, $"'{mark.Text}' has no unit", $"write one of {units} after it, such as {n.Number.Text} {symbols[0]}", "missing-unit");
            if (UnitTable.Find(n.Rest.Text) is not { } unit)
                return Bad<double>(n.Rest, $"'{n.Rest.Text}' is no unit known here", UnitTable.FindInOtherCase(n.Rest.Text) is { } other && other.Dimension == dimension
                    ? $"write {other.Symbol}: capitals count in units" : $"write one of {units}", "unknown-unit");
            if (unit.Dimension != dimension)
                return Bad<double>(n.Rest, $"{n.Rest.Text} measures {WordsFor(unit.Dimension)}; {WordsFor(dimension)} is wanted", $"write one of {units}", "wrong-dimension");
            return unit.ToSi(n.Value) is var si && double.IsFinite(si)
                ? new TextReading<double>.Good(si)
                : Bad<double>(n.Number, $"{n.Number.Text} {unit.Symbol} is larger than any quantity can be", "write the value that is meant", "out-of-range");
        });
    }

    internal static TextReading<NumberAndRest> ReadNumber(Slice text, string example)
    {
        if (text.Length == 0)
            return Bad<NumberAndRest>(text, "a value is wanted here, and nothing stands there", $"write a number, {example}", "empty-value");
        var end = NumberEnd(text.Text);
        var number = text.Part(0, end);
        var rest = text.Part(end, text.Length - end).Trim();
        if (rest.Text.StartsWith(',') && rest.Length > 1 && char.IsAsciiDigit(rest.Text[1]))
            return Bad<NumberAndRest>(text, $"'{text.Text}' holds a comma, which could be a decimal sign or a thousands separator", "write the number with a decimal point and no separators, such as 1450 or 1.45", "bad-number");
        if (number.Length > 0 && rest.Start == number.Start + number.Length && rest.Text is ['O' or 'o' or 'l' or 'I', >= '0' and <= '9' or '.', ..])
            return Bad<NumberAndRest>(text, $"'{text.Text}' holds the letter {rest.Text[0]} among its digits", $"write the digit {(rest.Text[0] is 'O' or 'o' ? '0' : '1')} for it", "bad-number");
        if (!double.TryParse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
            return Bad<NumberAndRest>(text, $"'{text.Text}' does not begin with a number", $"write a number with a decimal point, {example}", "bad-number");
        return new TextReading<NumberAndRest>.Good(new(value, number, rest));
    }

    internal static int NumberEnd(string text)
    {
        var i = text is ['+' or '-', ..] ? 1 : 0;
        while (i < text.Length && char.IsAsciiDigit(text[i]))
            i++;
        if (i < text.Length && text[i] == '.')
            for (i++; i < text.Length && char.IsAsciiDigit(text[i]);)
                i++;
        if (i < text.Length && text[i] is 'e' or 'E')
        {
            var exponent = i + 1 < text.Length && text[i + 1] is '+' or '-' ? i + 2 : i + 1;
            if (exponent < text.Length && char.IsAsciiDigit(text[exponent]))
                for (i = exponent; i < text.Length && char.IsAsciiDigit(text[i]);)
                    i++;
        }

        return i;
    }

    /// <summary>Lends the unit of the upper limit to a lower limit written without one.</summary>
    private static Slice WithUnitOf(Slice low, Slice high)
    {
        if (low.Length == 0 || NumberEnd(low.Text) < low.Length)
            return low;
        var lent = low.Text + high.Text[NumberEnd(high.Text)..];
        return new Slice(new string(' ', low.Start) + lent, low.Start, lent.Length);
    }

    private static string WordsFor(Dimension dimension) => dimension switch
    {
        Dimension.TorqueConstant => "a torque constant",
        Dimension.ViscousFriction => "viscous friction",
        Dimension.KinematicViscosity => "a kinematic viscosity",
        Dimension.Expansion => "an expansion per kelvin",
        Dimension.Inertia or Dimension.Angle or Dimension.Area => $"an {dimension.ToString().ToLowerInvariant()}",
        Dimension.Time or Dimension.Stiffness => dimension.ToString().ToLowerInvariant(),
        _ => $"a {dimension.ToString().ToLowerInvariant()}",
    };

    internal static TextReading<T> Bad<T>(Slice at, string what, string mend, string code) =>
        new TextReading<T>.Bad(new(at.Start, Math.Max(1, at.Length), what, mend, code));

    internal sealed record NumberAndRest(double Value, Slice Number, Slice Rest);
}
