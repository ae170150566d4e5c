namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>What one step of a measurement model does.</summary>
public enum Operation
{
    /// <summary>Puts a number.</summary>
    Number,

    /// <summary>Puts an input.</summary>
    Input,

    Add,
    Subtract,
    Multiply,
    Divide,
    Power,

    /// <summary>Changes the sign.</summary>
    Negate,

    SquareRoot,
    Exp,

    /// <summary>Natural logarithm.</summary>
    Ln,

    /// <summary>Logarithm to the base ten.</summary>
    Log10,

    Sin,
    Cos,
    Tan,
    Atan,

    /// <summary>The value without its sign.</summary>
    Abs,
}

/// <summary>One step, in the order of computing: operands first, then what is done with them.</summary>
/// <param name="Do">What is done.</param>
/// <param name="Number">The number that <see cref="Operation.Number"/> puts.</param>
/// <param name="Input">Which input <see cref="Operation.Input"/> puts, from 0.</param>
/// <param name="Start">Where it stands in the text, from 0.</param>
/// <param name="Length">Characters there.</param>
public readonly record struct Step(Operation Do, double Number, int Input, int Start, int Length)
{
    /// <summary>Operands taken from the stack.</summary>
    public int Operands => Do switch
    {
        Operation.Number or Operation.Input => 0,
        Operation.Add or Operation.Subtract or Operation.Multiply or Operation.Divide or Operation.Power => 2,
        _ => 1,
    };
}

/// <summary>The functions that a model may call, by the name they are written with.</summary>
internal static class Functions
{
    public static IReadOnlyDictionary<string, Operation> All { get; } = new Dictionary<string, Operation>(StringComparer.Ordinal)
    {
        ["sqrt"] = Operation.SquareRoot,
        ["exp"] = Operation.Exp,
        ["ln"] = Operation.Ln,
        ["log10"] = Operation.Log10,
        ["sin"] = Operation.Sin,
        ["cos"] = Operation.Cos,
        ["tan"] = Operation.Tan,
        ["atan"] = Operation.Atan,
        ["abs"] = Operation.Abs,
    };
}
