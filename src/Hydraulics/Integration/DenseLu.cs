namespace Ramwright.Hydraulics.Integration;

/// <summary>LU factors of a small dense matrix with partial pivoting, in place. Golub &amp; Van Loan, Matrix Computations, 4th ed., algorithm 3.4.1.</summary>
internal static class DenseLu
{
    /// <summary>Factors <paramref name="matrix"/> (row by row) in place.</summary>
    /// <returns>False when it is singular or not finite.</returns>
    public static bool Factor(Span<double> matrix, Span<int> pivots)
    {
        var n = pivots.Length;
        for (var column = 0; column < n; column++)
        {
            var pivot = column;
            for (var row = column + 1; row < n; row++)
            {
                if (Math.Abs(matrix[row * n + column]) > Math.Abs(matrix[pivot * n + column]))
                    pivot = row;
            }

            pivots[column] = pivot;
            var largest = matrix[pivot * n + column];
            if (largest == 0 || !double.IsFinite(largest))
                return false;
            if (pivot != column)
            {
                for (var j = 0; j < n; j++)
                    (matrix[column * n + j], matrix[pivot * n + j]) = (matrix[pivot * n + j], matrix[column * n + j]);
            }

            for (var row = column + 1; row < n; row++)
            {
                var factor = matrix[row * n + column] /= largest;
                if (factor == 0)
                    continue;
                for (var j = column + 1; j < n; j++)
                    matrix[row * n + j] -= factor * matrix[column * n + j];
            }
        }

        return true;
    }

    /// <summary>Solves with the factors, in place.</summary>
    public static void Solve(ReadOnlySpan<double> factors, ReadOnlySpan<int> pivots, Span<double> rightHand)
    {
        var n = pivots.Length;
        for (var i = 0; i < n; i++)
        {
            if (pivots[i] != i)
                (rightHand[i], rightHand[pivots[i]]) = (rightHand[pivots[i]], rightHand[i]);
        }

        for (var i = 1; i < n; i++)
        {
            var sum = rightHand[i];
            for (var j = 0; j < i; j++)
                sum -= factors[i * n + j] * rightHand[j];
            rightHand[i] = sum;
        }

        for (var i = n - 1; i >= 0; i--)
        {
            var sum = rightHand[i];
            for (var j = i + 1; j < n; j++)
                sum -= factors[i * n + j] * rightHand[j];
            rightHand[i] = sum / factors[i * n + i];
        }
    }
}
