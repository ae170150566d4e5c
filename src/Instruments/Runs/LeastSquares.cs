namespace Ramwright.Instruments.Runs;

/// <summary>Small linear fits with three terms, robust against single readings out of line.</summary>
internal static class LeastSquares
{
    /// <summary>Half the weight is lost beyond 1.345 standard deviations: 95 % efficient for normal errors (Huber, Annals of Mathematical Statistics 35 (1964) 73-101; the constant from memory).</summary>
    private const double Huber = 1.345;

    /// <summary>Coefficients, weighted sum of squares, and the inverse of the normal matrix; null when the terms do not determine them.</summary>
    public static Fit? Solve(ReadOnlySpan<Terms> terms, ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        Span<double> m = stackalloc double[9];
        Span<double> v = stackalloc double[3];
        m.Clear();
        v.Clear();
        for (var i = 0; i < values.Length; i++)
        {
            var w = weights[i];
            for (var r = 0; r < 3; r++)
            {
                v[r] += w * terms[i][r] * values[i];
                for (var c = 0; c < 3; c++)
                    m[(3 * r) + c] += w * terms[i][r] * terms[i][c];
            }
        }
        Span<double> inverse = stackalloc double[9];
        if (!Invert(m, inverse))
            return null;
        var found = new Terms(Row(inverse, 0, v), Row(inverse, 1, v), Row(inverse, 2, v));
        var squares = 0.0;
        for (var i = 0; i < values.Length; i++)
        {
            var off = values[i] - found.Dot(terms[i]);
            squares += weights[i] * off * off;
        }
        return double.IsFinite(squares) ? new(found, squares, [.. inverse]) : null;
    }

    /// <summary>The same with the weight of readings out of line reduced, in a few rounds, against a known standard deviation.</summary>
    public static Fit? SolveRobust(ReadOnlySpan<Terms> terms, ReadOnlySpan<double> values, double deviation)
    {
        var weights = new double[values.Length];
        Array.Fill(weights, 1);
        var fit = Solve(terms, values, weights);
        for (var round = 0; round < 10 && fit is not null; round++)
        {
            for (var i = 0; i < values.Length; i++)
                weights[i] = Math.Min(1, Huber * deviation / Math.Max(1e-300, Math.Abs(values[i] - fit.Coefficients.Dot(terms[i]))));
            fit = Solve(terms, values, weights);
        }
        return fit;
    }

    private static double Row(ReadOnlySpan<double> m, int row, ReadOnlySpan<double> v) => (m[3 * row] * v[0]) + (m[(3 * row) + 1] * v[1]) + (m[(3 * row) + 2] * v[2]);

    /// <summary>Inverse by cofactors of a symmetric matrix, scaled to a unit diagonal first.</summary>
    private static bool Invert(ReadOnlySpan<double> m, Span<double> to)
    {
        Span<double> s = [1 / Math.Sqrt(m[0]), 1 / Math.Sqrt(m[4]), 1 / Math.Sqrt(m[8])];
        Span<double> a = stackalloc double[9];
        for (var i = 0; i < 9; i++)
            a[i] = m[i] * s[i / 3] * s[i % 3];
        for (var r = 0; r < 3; r++)
        {
            for (var c = 0; c < 3; c++)
                to[(3 * c) + r] = Cofactor(a, r, c);
        }
        var determinant = (a[0] * to[0]) + (a[1] * to[3]) + (a[2] * to[6]);
        if (!(Math.Abs(determinant) > 1e-12))
            return false;
        for (var i = 0; i < 9; i++)
            to[i] *= s[i / 3] * s[i % 3] / determinant;
        return true;
    }

    private static double Cofactor(ReadOnlySpan<double> a, int row, int column)
    {
        var (r1, r2, c1, c2) = ((row + 1) % 3, (row + 2) % 3, (column + 1) % 3, (column + 2) % 3);
        return (a[(3 * r1) + c1] * a[(3 * r2) + c2]) - (a[(3 * r1) + c2] * a[(3 * r2) + c1]);
    }
}

/// <summary>Three terms of a linear model, or its three coefficients.</summary>
internal readonly record struct Terms(double A, double B, double C)
{
    public double this[int i] => i == 0 ? A : i == 1 ? B : C;

    /// <summary>Sum of the products of like terms, a value in the unit of those.</summary>
    public double Dot(Terms other) => (A * other.A) + (B * other.B) + (C * other.C);
}

/// <summary>A fit: coefficients, weighted sum of squares, inverse normal matrix (times the variance it is the covariance).</summary>
internal sealed record Fit(Terms Coefficients, double Squares, double[] Inverse)
{
    /// <summary>Variance of a combination of the coefficients for noise of variance one.</summary>
    public double Variance(Terms of)
    {
        var sum = 0.0;
        for (var r = 0; r < 3; r++)
        {
            for (var c = 0; c < 3; c++)
                sum += of[r] * of[c] * Inverse[(3 * r) + c];
        }
        return sum;
    }
}
