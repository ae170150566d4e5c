using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>Whether a model makes sense in units: what is added measures the same, what goes into a function is a plain number.</summary>
public static class UnitCheck
{
    /// <summary>What the result measures, or where in the formula units clash.</summary>
    /// <param name="model">The formula.</param>
    /// <param name="inputs">What each input measures, in the model's order.</param>
    public static TextReading<Powers> Check(Expression model, ReadOnlySpan<Powers> inputs)
    {
        ArgumentNullException.ThrowIfNull(model);
        var stack = new Stack<Known>(model.Steps.Length);
        foreach (var step in model.Steps)
        {
            var right = step.Operands > 0 ? stack.Pop() : default;
            var left = step.Operands > 1 ? stack.Pop() : right;
            if (Clash(step, left, right) is { } fault)
                return new TextReading<Powers>.Bad(fault);
            stack.Push(Result(step, left, right, inputs));
        }

        return new TextReading<Powers>.Good(stack.Pop().Powers);
    }

    private static Known Result(Step step, Known left, Known right, ReadOnlySpan<Powers> inputs) => step.Do switch
    {
        Operation.Number => new(Powers.None, step.Number),
        Operation.Input => new(inputs[step.Input], null),
        Operation.Multiply => new(left.Powers + right.Powers, null),
        Operation.Divide => new(left.Powers + right.Powers * -1, left.Number / right.Number),
        Operation.Power => new(left.Powers == Powers.None ? Powers.None : left.Powers * right.Number!.Value, null),
        Operation.Negate => new(left.Powers, -left.Number),
        Operation.SquareRoot => new(left.Powers * 0.5, null),
        Operation.Add or Operation.Subtract or Operation.Abs => new(left.Powers, null),
        _ => new(Powers.None, null),
    };

    private static TextFault? Clash(Step step, Known left, Known right) => step.Do switch
    {
        Operation.Add or Operation.Subtract when left.Powers != right.Powers => Fault(step, $"{left.Powers} and {right.Powers} are {(step.Do == Operation.Add ? "added" : "subtracted")} here", "see to the inputs' units and to the formula: only what measures the same can be added"),
        Operation.Power when right.Powers != Powers.None => Fault(step, $"an exponent is {right.Powers} here", "write a plain number as exponent"),
        Operation.Power when left.Powers != Powers.None && right.Number is null => Fault(step, $"{left.Powers} is raised to a power that is no fixed number", "write the exponent as a number, such as 2 or 1/2 in parentheses"),
        Operation.Exp or Operation.Ln or Operation.Log10 or Operation.Sin or Operation.Cos or Operation.Tan or Operation.Atan when left.Powers != Powers.None =>
            Fault(step, $"a function is taken of {left.Powers} here", "divide by a quantity of the same kind first: functions take plain numbers and angles"),
        _ => null,
    };

    private static TextFault Fault(Step step, string what, string mend) => new(step.Start, Math.Max(1, step.Length), what, mend, "unit-clash");

    /// <summary>What a place of the stack measures, and its number where it is fixed.</summary>
    private readonly record struct Known(Powers Powers, double? Number);
}
