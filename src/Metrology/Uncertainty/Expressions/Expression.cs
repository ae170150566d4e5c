using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>A measurement model: a formula over named inputs, read once into steps for a small stack machine.</summary>
/// <remarks>It can compute and nothing else: no names but its inputs, no calls but the functions listed, bounded in length and depth.</remarks>
public sealed class Expression
{
    internal Expression(string text, ImmutableArray<string> inputs, ImmutableArray<Step> steps)
    {
        (Text, Inputs, Steps) = (text, inputs, steps);
        int depth = 0, deepest = 0;
        foreach (var step in steps)
            deepest = Math.Max(deepest, depth += 1 - step.Operands);
        Depth = deepest;
    }

    /// <summary>As it was written.</summary>
    public string Text { get; }

    /// <summary>Names of the inputs, in the order of the values that are given.</summary>
    public ImmutableArray<string> Inputs { get; }

    /// <summary>The steps, operands before what uses them.</summary>
    public ImmutableArray<Step> Steps { get; }

    /// <summary>Places that the stack needs.</summary>
    internal int Depth { get; }

    /// <summary>Reads a formula: + − × ÷ ^ (also * / ² ³), parentheses, sqrt, exp, ln, log10, sin, cos, tan, atan, abs, pi, numbers and the inputs named.</summary>
    public static TextReading<Expression> Read(string text, ImmutableArray<string> inputs) => new ExpressionParser(text, inputs).Read();

    /// <summary>The sum of all inputs, each times its factor.</summary>
    public static Expression Sum(ImmutableArray<(string Name, double Factor)> inputs)
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        for (var i = 0; i < inputs.Length; i++)
        {
            steps.Add(new(Operation.Input, 0, i, 0, 0));
            if (inputs[i].Factor != 1)
                steps.AddRange(new Step(Operation.Number, inputs[i].Factor, 0, 0, 0), new Step(Operation.Multiply, 0, 0, 0, 0));
            if (i > 0)
                steps.Add(new(Operation.Add, 0, 0, 0, 0));
        }

        return new("sum of the inputs", [.. inputs.Select(i => i.Name)], steps.ToImmutable());
    }

    /// <summary>Whether the input takes part.</summary>
    public bool Uses(int input) => Steps.Any(s => s.Do == Operation.Input && s.Input == input);

    /// <summary>The value, NaN or infinite where the model has none.</summary>
    public double Value(ReadOnlySpan<double> inputs) => WithSlopes(inputs, slopes: false).Value;

    /// <summary>The value and its exact partial derivative by each input; NaN or infinite where there is none.</summary>
    public Dual WithSlopes(ReadOnlySpan<double> inputs) => WithSlopes(inputs, slopes: true);

    private Dual WithSlopes(ReadOnlySpan<double> inputs, bool slopes)
    {
        if (inputs.Length != Inputs.Length)
            throw new ArgumentException($"{Inputs.Length} inputs are wanted, {inputs.Length} were given.", nameof(inputs));
        var stack = new Stack<Dual>(Depth);
        var count = slopes ? inputs.Length : 0;
        foreach (var step in Steps)
        {
            stack.Push(step.Do switch
            {
                Operation.Number => Dual.Constant(step.Number, count),
                Operation.Input => Dual.Variable(inputs[step.Input], slopes ? step.Input : null, count),
                _ when step.Operands == 2 && stack.Pop() is var right => Dual.Of(step.Do, stack.Pop(), right),
                _ => Dual.Of(step.Do, stack.Pop()),
            });
        }

        return stack.Pop();
    }
}
