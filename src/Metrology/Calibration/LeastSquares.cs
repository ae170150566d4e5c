namespace Ramwright.Metrology.Calibration;

/// <summary>Weighted linear least squares.</summary>
/// <remarks>
/// Householder's QR factorisation (G. H. Golub, Numerische Mathematik 7 (1965) 206), carried out with 31 digits, so that the answer is as good as the data.
/// Held against the certified values of NIST's Statistical Reference Datasets.
/// </remarks>
internal sealed class LeastSquares
{
    private readonly DoubleDouble[][] _inverse; // of the triangle R

    private LeastSquares(double[] coefficients, DoubleDouble[][] inverse, double squares, int degreesOfFreedom) =>
        (Coefficients, _inverse, Squares, DegreesOfFreedom) = (coefficients, inverse, squares, degreesOfFreedom);

    public double[] Coefficients { get; }

    /// <summary>Weighted sum of squared residuals, a value in the ordinate's unit squared (or without unit when weights are 1/u²).</summary>
    public double Squares { get; }

    public int DegreesOfFreedom { get; }

    /// <summary>Variance of a row times the coefficients when each ordinate of weight 1 has variance 1; a share of that variance.</summary>
    public double Leverage(ReadOnlySpan<double> row)
    {
        DoubleDouble sum = 0;
        for (var j = 0; j < _inverse.Length; j++)
        {
            DoubleDouble part = 0;
            for (var i = 0; i <= j; i++)
                part += _inverse[i][j] * row[i];
            sum += part * part;
        }

        return (double)sum;
    }

    /// <summary>The fit, or null when the columns cannot be told apart or there are fewer rows than columns.</summary>
    /// <param name="rows">One for each ordinate, all as long.</param>
    /// <param name="ordinates">Finite.</param>
    /// <param name="weights">Above zero; empty when all are 1.</param>
    public static LeastSquares? Fit(DoubleDouble[][] rows, ReadOnlySpan<double> ordinates, ReadOnlySpan<double> weights)
    {
        var (n, p) = (rows.Length, rows.Length == 0 ? 0 : rows[0].Length);
        if (n < p || p == 0)
            return null;
        var a = new DoubleDouble[n][];
        var y = new DoubleDouble[n];
        for (var i = 0; i < n; i++)
        {
            var root = weights.IsEmpty ? (DoubleDouble)1 : DoubleDouble.Sqrt(weights[i]);
            a[i] = Array.ConvertAll(rows[i], x => x * root);
            y[i] = root * ordinates[i];
        }

        if (!Triangulate(a, y, p))
            return null;
        var inverse = Inverse(a, p);
        var coefficients = new double[p];
        for (var i = 0; i < p; i++)
        {
            DoubleDouble sum = 0;
            for (var j = i; j < p; j++)
                sum += inverse[i][j] * y[j];
            coefficients[i] = (double)sum;
        }

        DoubleDouble squares = 0;
        for (var i = p; i < n; i++)
            squares += y[i] * y[i];
        return new(coefficients, inverse, (double)squares, n - p);
    }

    /// <summary>Turns the columns, one by one, so that only a triangle is left; false when a column is made up of those before it.</summary>
    private static bool Triangulate(DoubleDouble[][] a, DoubleDouble[] y, int columns)
    {
        const double Lost = 1e-22; // of a column's length, when 31 digits are carried
        for (var k = 0; k < columns; k++)
        {
            DoubleDouble whole = 0, below = 0;
            for (var i = 0; i < a.Length; i++)
            {
                whole += a[i][k] * a[i][k];
                if (i >= k)
                    below += a[i][k] * a[i][k];
            }

            var length = DoubleDouble.Sqrt(below);
            if (!(length.High > Lost * Math.Sqrt(whole.High)))
                return false;
            var pivot = a[k][k].High > 0 ? -length : length;
            var v = new DoubleDouble[a.Length];
            for (var i = k; i < a.Length; i++)
                v[i] = a[i][k];
            v[k] -= pivot;
            var half = length * length - pivot * a[k][k]; // |v|²/2
            for (var j = k + 1; j < columns; j++)
            {
                DoubleDouble dot = 0;
                for (var i = k; i < a.Length; i++)
                    dot += v[i] * a[i][j];
                dot /= half;
                for (var i = k; i < a.Length; i++)
                    a[i][j] -= dot * v[i];
            }

            DoubleDouble dotY = 0;
            for (var i = k; i < a.Length; i++)
                dotY += v[i] * y[i];
            dotY /= half;
            for (var i = k; i < a.Length; i++)
                y[i] -= dotY * v[i];
            a[k][k] = pivot;
        }

        return true;
    }

    private static DoubleDouble[][] Inverse(DoubleDouble[][] triangle, int size)
    {
        var inverse = new DoubleDouble[size][];
        for (var i = size - 1; i >= 0; i--)
        {
            inverse[i] = new DoubleDouble[size];
            inverse[i][i] = (DoubleDouble)1 / triangle[i][i];
            for (var j = i + 1; j < size; j++)
            {
                DoubleDouble sum = 0;
                for (var k = i + 1; k <= j; k++)
                    sum += triangle[i][k] * inverse[k][j];
                inverse[i][j] = -sum / triangle[i][i];
            }
        }

        return inverse;
    }
}
