using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>Reads a formula by recursive descent; the first thing that does not fit is the fault, with its place.</summary>
/// <remarks>Powers bind closer than a sign before them, and from the right: −x^2 is −(x²), 2^3^2 is 2⁹.</remarks>
internal sealed class ExpressionParser(string text, ImmutableArray<string> inputs)
{
    private const int Longest = 2_000;
    private const int Deepest = 64;
    private readonly ImmutableArray<Step>.Builder steps = ImmutableArray.CreateBuilder<Step>();
    private int at;
    private int depth;
    private TextFault? fault;

    public TextReading<Expression> Read()
    {
        if (text.Length > Longest)
            return Bad(0, text.Length, string.Create(CultureInfo.InvariantCulture, $"the formula has {text.Length} characters; {Longest} are read"), "split it: work out parts beforehand and give them as inputs");
        Skip();
        if (at == text.Length)
            return Bad(0, Math.Max(1, text.Length), "a formula is wanted here, and nothing stands there", "write one over the inputs, such as p * A - spring");
        ReadSum();
        Skip();
        if (fault is null && at < text.Length)
            Fail(at, 1, $"'{text[at]}' does not fit here", text[at] == ')' ? "take it away, or open a parenthesis before it" : "write an operator (+ − × ÷ ^) between two values");
        return fault is null ? new TextReading<Expression>.Good(new(text, inputs, steps.ToImmutable())) : new TextReading<Expression>.Bad(fault);
    }

    private void ReadSum()
    {
        if (!Enter())
            return;
        ReadProduct();
        while (fault is null && Take("+-\u2212") is { } sign)
        {
            ReadProduct();
            Put(sign.Char == '+' ? Operation.Add : Operation.Subtract, sign.At);
        }

        depth--;
    }

    private void ReadProduct()
    {
        ReadSigned();
        while (fault is null && Take("*/\u00d7\u00f7\u00b7") is { } sign)
        {
            ReadSigned();
            Put(sign.Char is '/' or '\u00f7' ? Operation.Divide : Operation.Multiply, sign.At);
        }
    }

    private void ReadSigned()
    {
        if (Take("+-\u2212") is not { } sign)
        {
            ReadPower();
            return;
        }

        if (!Enter())
            return;
        ReadSigned();
        if (sign.Char != '+')
            Put(Operation.Negate, sign.At);
        depth--;
    }

    private void ReadPower()
    {
        ReadValue();
        while (fault is null && Take("\u00b2\u00b3") is { } raised)
        {
            steps.Add(new(Operation.Number, raised.Char == '\u00b2' ? 2 : 3, 0, raised.At, 1));
            Put(Operation.Power, raised.At);
        }

        if (fault is not null || Take("^") is not { } sign)
            return;
        ReadSigned();
        Put(Operation.Power, sign.At);
    }

    private void ReadValue()
    {
        Skip();
        if (at == text.Length)
            Fail(Math.Max(0, at - 1), 1, "the formula ends where a value is wanted", "write what follows, or take the last sign away");
        else if (text[at] == '(')
            ReadInside(at++);
        else if (char.IsAsciiDigit(text[at]) || text[at] == '.')
            ReadNumber();
        else if (char.IsLetter(text[at]))
            ReadName();
        else
            Fail(at, 1, $"'{text[at]}' stands where a value is wanted", "write a number, an input, a function or a parenthesis there");
    }

    private void ReadInside(int open)
    {
        ReadSum();
        if (fault is null && Take(")") is null)
            Fail(open, 1, "this parenthesis is not closed", "write ) where it ends");
    }

    private void ReadNumber()
    {
        var start = at;
        at += QuantityReader.NumberEnd(text[at..]);
        var written = text[start..at];
        if (!double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
            Fail(start, Math.Max(1, at - start), $"'{written}' is no number", "write it with digits and a decimal point, such as 0.25 or 2.5e-6");
        else
            steps.Add(new(Operation.Number, value, 0, start, at - start));
    }

    private void ReadName()
    {
        var start = at;
        while (at < text.Length && (char.IsLetterOrDigit(text[at]) || text[at] == '_'))
            at++;
        var name = text[start..at];
        var input = inputs.IndexOf(name);
        Skip();
        if (at < text.Length && text[at] == '(' && input < 0)
            ReadCall(name, start);
        else if (input >= 0)
            steps.Add(new(Operation.Input, 0, input, start, name.Length));
        else if (name is "pi" or "π")
            steps.Add(new(Operation.Number, Math.PI, 0, start, name.Length));
        else if (Functions.All.ContainsKey(name))
            Fail(start, name.Length, $"{name} is a function, and no parenthesis follows", $"write {name}( ... ) around what it is taken of");
        else
            Fail(start, name.Length, $"no input is called '{name}'", NearName.Find(name, inputs) is { } near ? $"write {near}, or add {name} under inputs:" : $"add {name} under inputs:, or take it out of the formula", "unknown-input");
    }

    private void ReadCall(string name, int start)
    {
        if (!Functions.All.TryGetValue(name, out var operation))
        {
            Fail(start, name.Length, $"no function is called '{name}'", NearName.Find(name, Functions.All.Keys) is { } near ? $"write {near}" : $"these are read: {string.Join(", ", Functions.All.Keys)}", "unknown-function");
            return;
        }

        ReadInside(at++);
        if (fault is null)
            steps.Add(new(operation, 0, 0, start, name.Length));
    }

    private bool Enter()
    {
        if (++depth <= Deepest)
            return true;
        Fail(at, 1, string.Create(CultureInfo.InvariantCulture, $"the formula is nested deeper than {Deepest} levels here"), "split it: work out parts beforehand and give them as inputs");
        return false;
    }

    private (char Char, int At)? Take(string signs)
    {
        Skip();
        return at < text.Length && signs.Contains(text[at], StringComparison.Ordinal) ? (text[at], at++) : null;
    }

    private void Put(Operation operation, int start)
    {
        if (fault is null)
            steps.Add(new(operation, 0, 0, start, 1));
    }

    private void Skip()
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
            at++;
    }

    private void Fail(int start, int length, string what, string mend, string? code = null) => fault ??= new(start, length, what, mend, code ?? "bad-formula");

    private static TextReading<Expression>.Bad Bad(int start, int length, string what, string mend) => new(new TextFault(start, length, what, mend, "bad-formula"));
}
