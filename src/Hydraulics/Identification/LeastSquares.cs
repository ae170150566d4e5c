namespace Ramwright.Hydraulics.Identification;

/// <summary>A sum of squares in blocks, each block dependent on some of the unknowns only.</summary>
internal interface IResiduals
{
    int Unknowns { get; }

    int Blocks { get; }

    /// <summary>Rows of a block.</summary>
    int Rows(int block);

    /// <summary>Residuals of a block in units of their standard deviation.</summary>
    void Evaluate(int block, ReadOnlySpan<double> unknowns, Span<double> residuals);

    bool Depends(int block, int unknown);

    /// <summary>A small change of an unknown for its differences; its natural size.</summary>
    double Step(int unknown);

    (double Least, double Most) Range(int unknown);
}

/// <summary>The least sum of squares that was found.</summary>
/// <param name="Unknowns">Where.</param>
/// <param name="Cost">Half the sum of squares.</param>
/// <param name="Normal">JᵀJ there, row by row: the inverse of the covariance.</param>
/// <param name="Converged">False when the limit of steps was reached first.</param>
internal sealed record Minimum(double[] Unknowns, double Cost, double[] Normal, bool Converged);

/// <summary>Levenberg–Marquardt with box limits and differences block by block.</summary>
/// <remarks>Damping after H. B. Nielsen, IMM-REP-1999-05 (from memory): the gain ratio sets it. Limits by projection.</remarks>
internal static class LeastSquares
{
    public static Minimum Solve(IResiduals problem, double[] start, int mostSteps = 30)
    {
        var n = problem.Unknowns;
        var x = Clamped(problem, start);
        var residuals = new double[problem.Blocks][];
        var trial = new double[problem.Blocks][];
        for (var b = 0; b < problem.Blocks; b++)
            (residuals[b], trial[b]) = (new double[problem.Rows(b)], new double[problem.Rows(b)]);
        var cost = Evaluate(problem, x, residuals);
        var (normal, gradient) = (new double[n * n], new double[n]);
        Linearise(problem, x, residuals, normal, gradient);
        double damping = 1e-3, growth = 2;
        var converged = false;
        for (var step = 0; step < mostSteps && !converged; step++)
        {
            var move = Move(problem, x, normal, gradient, damping);
            var next = new double[n];
            for (var i = 0; i < n; i++)
                next[i] = x[i] + move[i];
            next = Clamped(problem, next);
            var expected = 0.0;
            var largest = 0.0;
            for (var i = 0; i < n; i++)
            {
                move[i] = next[i] - x[i];
                largest = Math.Max(largest, Math.Abs(move[i]) * Math.Sqrt(normal[i * n + i]));
            }

            for (var i = 0; i < n; i++)
            {
                var along = 0.0;
                for (var j = 0; j < n; j++)
                    along += normal[i * n + j] * move[j];
                expected -= move[i] * (gradient[i] + 0.5 * along);
            }

            var nextCost = Evaluate(problem, next, trial);
            var gain = (cost - nextCost) / Math.Max(expected, 1e-12);
            if (nextCost < cost)
            {
                converged = cost - nextCost < 1e-4 * (1 + 1e-3 * cost) && gain > 0.1;
                (x, cost) = (next, nextCost);
                (residuals, trial) = (trial, residuals);
                Linearise(problem, x, residuals, normal, gradient);
                damping *= Math.Max(1.0 / 3, 1 - Math.Pow(2 * Math.Min(gain, 1) - 1, 3));
                growth = 2;
            }
            else
            {
                converged = largest < 1e-3;
                damping *= growth;
                growth *= 2;
            }

            if (damping > 1e10)
                break;
        }

        return new Minimum(x, cost, normal, converged);
    }

    private static double[] Clamped(IResiduals problem, double[] x)
    {
        var inside = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var (least, most) = problem.Range(i);
            inside[i] = Math.Clamp(x[i], least, most);
        }

        return inside;
    }

    private static double Evaluate(IResiduals problem, double[] x, double[][] residuals)
    {
        var sum = 0.0;
        for (var b = 0; b < residuals.Length; b++)
        {
            problem.Evaluate(b, x, residuals[b]);
            foreach (var r in residuals[b])
                sum += r * r;
        }

        return double.IsFinite(sum) ? 0.5 * sum : double.MaxValue;
    }

    private static void Linearise(IResiduals problem, double[] x, double[][] residuals, double[] normal, double[] gradient)
    {
        var n = x.Length;
        Array.Clear(normal);
        Array.Clear(gradient);
        var moved = (double[])x.Clone();
        var columns = new double[n][];
        for (var b = 0; b < residuals.Length; b++)
        {
            var rows = residuals[b].Length;
            var up = new double[rows];
            for (var i = 0; i < n; i++)
            {
                columns[i] = [];
                if (!problem.Depends(b, i))
                    continue;
                var h = problem.Step(i);
                if (x[i] + h > problem.Range(i).Most)
                    h = -h;
                moved[i] = x[i] + h;
                problem.Evaluate(b, moved, up);
                moved[i] = x[i];
                columns[i] = new double[rows];
                for (var r = 0; r < rows; r++)
                    columns[i][r] = (up[r] - residuals[b][r]) / h;
            }

            for (var i = 0; i < n; i++)
            {
                if (columns[i].Length == 0)
                    continue;
                for (var r = 0; r < rows; r++)
                    gradient[i] += columns[i][r] * residuals[b][r];
                for (var j = 0; j <= i; j++)
                {
                    if (columns[j].Length == 0)
                        continue;
                    var sum = 0.0;
                    for (var r = 0; r < rows; r++)
                        sum += columns[i][r] * columns[j][r];
                    normal[i * n + j] += sum;
                    if (i != j)
                        normal[j * n + i] += sum;
                }
            }
        }
    }

    /// <summary>(N + λ·diag N)·move = −gradient; unknowns held at a limit stay.</summary>
    private static double[] Move(IResiduals problem, double[] x, double[] normal, double[] gradient, double damping)
    {
        var n = x.Length;
        var matrix = (double[])normal.Clone();
        var right = new double[n];
        for (var i = 0; i < n; i++)
        {
            var (least, most) = problem.Range(i);
            var held = (x[i] <= least && gradient[i] > 0) || (x[i] >= most && gradient[i] < 0);
            right[i] = held ? 0 : -gradient[i];
            matrix[i * n + i] = held ? 1e300 : normal[i * n + i] * (1 + damping) + 1e-12;
        }

        return PositiveMatrix.Solve(matrix, right) ?? new double[n];
    }
}
