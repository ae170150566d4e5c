using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Computes a model for many trials at once; one machine per thread.</summary>
internal sealed class BlockMachine
{
    private readonly Expression model;
    private readonly double[][] stack;
    private readonly double[][] places; // what each place of the stack shows: its own buffer, or an input left where it is

    public BlockMachine(Expression model, int trials)
    {
        this.model = model;
        stack = new double[model.Depth][];
        places = new double[model.Depth][];
        for (var i = 0; i < stack.Length; i++)
            stack[i] = new double[trials];
    }

    /// <summary>The result of each trial; a multiple of four trials.</summary>
    public ReadOnlySpan<double> Run(double[][] inputs)
    {
        var top = 0;
        foreach (var step in model.Steps)
        {
            top -= step.Operands;
            if (step.Do == Operation.Input)
            {
                places[top++] = inputs[step.Input];
                continue;
            }

            var to = stack[top];
            if (step.Do == Operation.Number)
                Array.Fill(to, step.Number);
            else if (step.Operands == 2)
                Binary(step.Do, places[top], places[top + 1], to);
            else
                Unary(step.Do, places[top], to);
            places[top++] = to;
        }

        return places[0];
    }

    private static void Binary(Operation operation, double[] left, double[] right, double[] to)
    {
        var z = Vectors(to);
        var x = Vectors(left)[..z.Length];
        var y = Vectors(right)[..z.Length];
        switch (operation)
        {
            case Operation.Add:
                for (var i = 0; i < z.Length; i++)
                    z[i] = x[i] + y[i];
                break;
            case Operation.Subtract:
                for (var i = 0; i < z.Length; i++)
                    z[i] = x[i] - y[i];
                break;
            case Operation.Multiply:
                for (var i = 0; i < z.Length; i++)
                    z[i] = x[i] * y[i];
                break;
            case Operation.Divide:
                for (var i = 0; i < z.Length; i++)
                    z[i] = x[i] / y[i];
                break;
            default:
                for (var i = 0; i < to.Length; i++)
                    to[i] = right[i] == 2 ? left[i] * left[i] : Math.Pow(left[i], right[i]);
                break;
        }
    }

    private static void Unary(Operation operation, double[] from, double[] to)
    {
        var z = Vectors(to);
        var x = Vectors(from)[..z.Length];
        switch (operation)
        {
            case Operation.Negate:
                for (var i = 0; i < z.Length; i++)
                    z[i] = -x[i];
                break;
            case Operation.Abs:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Abs(x[i]);
                break;
            case Operation.SquareRoot:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Sqrt(x[i]);
                break;
            case Operation.Exp:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Exp(x[i]);
                break;
            case Operation.Ln:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Log(x[i]);
                break;
            case Operation.Sin:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Sin(x[i]);
                break;
            case Operation.Cos:
                for (var i = 0; i < z.Length; i++)
                    z[i] = Vector256.Cos(x[i]);
                break;
            default:
                OneByOne(operation, from, to);
                break;
        }
    }

    private static void OneByOne(Operation operation, double[] from, double[] to)
    {
        Func<double, double> function = operation switch
        {
            Operation.Log10 => Math.Log10,
            Operation.Tan => Math.Tan,
            Operation.Atan => Math.Atan,
            _ => throw new ArgumentOutOfRangeException(nameof(operation), operation, "An operation on one number is wanted."),
        };
        for (var i = 0; i < to.Length; i++)
            to[i] = function(from[i]);
    }

    private static Span<Vector256<double>> Vectors(double[] numbers) => MemoryMarshal.Cast<double, Vector256<double>>(numbers.AsSpan());
}
