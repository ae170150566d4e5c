namespace Ramwright.Hydraulics.Identification;

/// <summary>Symmetric positive matrices row by row: Cholesky.</summary>
internal static class PositiveMatrix
{
    /// <summary>Lower triangle L with L·Lᵀ = A; null when A is not positive.</summary>
    public static double[]? Factor(double[] matrix)
    {
        var n = (int)Math.Round(Math.Sqrt(matrix.Length));
        var lower = new double[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i * n + j];
                for (var k = 0; k < j; k++)
                    sum -= lower[i * n + k] * lower[j * n + k];
                if (i != j)
                    lower[i * n + j] = sum / lower[j * n + j];
                else if (sum > 0)
                    lower[i * n + i] = Math.Sqrt(sum);
                else
                    return null;
            }
        }

        return lower;
    }

    public static double[]? Solve(double[] matrix, double[] right)
    {
        if (Factor(matrix) is not { } lower)
            return null;
        var n = right.Length;
        var x = (double[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++)
                x[i] -= lower[i * n + k] * x[k];
            x[i] /= lower[i * n + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++)
                x[i] -= lower[k * n + i] * x[k];
            x[i] /= lower[i * n + i];
        }

        return x;
    }

    /// <summary>The inverse, row by row; null when the matrix is not positive.</summary>
    public static double[]? Inverse(double[] matrix)
    {
        var n = (int)Math.Round(Math.Sqrt(matrix.Length));
        var inverse = new double[n * n];
        for (var column = 0; column < n; column++)
        {
            var unit = new double[n];
            unit[column] = 1;
            if (Solve(matrix, unit) is not { } solved)
                return null;
            for (var row = 0; row < n; row++)
                inverse[row * n + column] = solved[row];
        }

        return inverse;
    }

    /// <summary>ln det A; null when A is not positive.</summary>
    public static double? LogDeterminant(double[] matrix)
    {
        if (Factor(matrix) is not { } lower)
            return null;
        var n = (int)Math.Round(Math.Sqrt(matrix.Length));
        var sum = 0.0;
        for (var i = 0; i < n; i++)
            sum += 2 * Math.Log(lower[i * n + i]);
        return sum;
    }
}
