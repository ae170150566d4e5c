namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>A number that carries its partial derivatives through a computation, so that they come out exact.</summary>
/// <param name="Value">The value.</param>
/// <param name="Slopes">By each input in turn.</param>
/// <remarks>Forward-mode differentiation: A. Griewank &amp; A. Walther, Evaluating Derivatives, 2nd ed. (SIAM 2008), ch. 3.</remarks>
public readonly record struct Dual(double Value, double[] Slopes)
{
    internal static Dual Constant(double value, int count) => new(value, new double[count]);

    internal static Dual Variable(double value, int? index, int count)
    {
        var slopes = new double[count];
        if (index is { } i)
            slopes[i] = 1;
        return new(value, slopes);
    }

    internal static Dual Of(Operation operation, Dual x) => operation switch
    {
        Operation.Negate => x.Then(-x.Value, -1),
        Operation.SquareRoot => Math.Sqrt(x.Value) is var root ? x.Then(root, 0.5 / root) : default,
        Operation.Exp => Math.Exp(x.Value) is var exp ? x.Then(exp, exp) : default,
        Operation.Ln => x.Then(Math.Log(x.Value), 1 / x.Value),
        Operation.Log10 => x.Then(Math.Log10(x.Value), 1 / (x.Value * Math.Log(10))),
        Operation.Sin => x.Then(Math.Sin(x.Value), Math.Cos(x.Value)),
        Operation.Cos => x.Then(Math.Cos(x.Value), -Math.Sin(x.Value)),
        Operation.Tan => Math.Tan(x.Value) is var tan ? x.Then(tan, 1 + tan * tan) : default,
        Operation.Atan => x.Then(Math.Atan(x.Value), 1 / (1 + x.Value * x.Value)),
        Operation.Abs => x.Then(Math.Abs(x.Value), x.Value == 0 ? double.NaN : Math.Sign(x.Value)),
        _ => throw new ArgumentOutOfRangeException(nameof(operation), operation, "An operation on one number is wanted."),
    };

    internal static Dual Of(Operation operation, Dual a, Dual b) => operation switch
    {
        Operation.Add => Join(a, b, a.Value + b.Value, 1, 1),
        Operation.Subtract => Join(a, b, a.Value - b.Value, 1, -1),
        Operation.Multiply => Join(a, b, a.Value * b.Value, b.Value, a.Value),
        Operation.Divide => Join(a, b, a.Value / b.Value, 1 / b.Value, -a.Value / (b.Value * b.Value)),
        Operation.Power => Join(a, b, Math.Pow(a.Value, b.Value), BaseSlope(a.Value, b.Value), Math.Pow(a.Value, b.Value) * Math.Log(a.Value)),
        _ => throw new ArgumentOutOfRangeException(nameof(operation), operation, "An operation on two numbers is wanted."),
    };

    private static double BaseSlope(double x, double power) => power == 0 ? 0 : power * Math.Pow(x, power - 1);

    private Dual Then(double value, double slope) => new(value, Array.ConvertAll(Slopes, s => s == 0 ? 0 : s * slope));

    /// <summary>A slope of exactly zero stays zero beside an infinite factor: a number has no slope, however steep the operation.</summary>
    private static Dual Join(Dual a, Dual b, double value, double slopeA, double slopeB)
    {
        var slopes = new double[a.Slopes.Length];
        for (var i = 0; i < slopes.Length; i++)
            slopes[i] = (a.Slopes[i] == 0 ? 0 : a.Slopes[i] * slopeA) + (b.Slopes[i] == 0 ? 0 : b.Slopes[i] * slopeB);
        return new(value, slopes);
    }
}
