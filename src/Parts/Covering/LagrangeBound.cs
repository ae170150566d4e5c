namespace Ramwright.Parts.Covering;

/// <summary>A lower bound on what covering the rest costs: the rows' needs priced by multipliers, improved by subgradient steps.</summary>
/// <remarks>
/// L(λ) = Σ λᵢ·needᵢ + Σ min(0, c̃ⱼ)·uⱼ with c̃ⱼ = cⱼ − Σ min(aᵢⱼ, needᵢ)·λᵢ and uⱼ the most pieces of use. A content is cut down to
/// the need left, which whole pieces allow. Step length after Held, Wolfe and Crowder, Validation of subgradient optimization,
/// Mathematical Programming 6 (1974) 62-88: a factor times (upper − L)/|g|², the factor halved when nothing improves.
/// </remarks>
internal sealed class LagrangeBound(CoverProblem problem)
{
    private readonly double[] _gradient = new double[problem.Need.Length];
    private readonly double[] _trial = new double[problem.Need.Length];
    private readonly double[] _trialReduced = new double[problem.Columns.Length];

    /// <summary>Reduced costs at the best multipliers of the last call, per column; only those of live columns mean something.</summary>
    public double[] Reduced { get; } = new double[problem.Columns.Length];

    /// <summary>Multipliers to start from: each row at the least cost per unit of use.</summary>
    public double[] Start(CoverState state)
    {
        var multipliers = new double[problem.Need.Length];
        Array.Fill(multipliers, double.PositiveInfinity);
        foreach (var column in problem.Columns)
        {
            var use = column.Contents.Sum(g => Math.Min(g.Count, Math.Max(0, state.Need[g.Row])));
            foreach (var item in column.Contents)
                multipliers[item.Row] = Math.Min(multipliers[item.Row], use > 0 ? (double)column.Cost / use : double.PositiveInfinity);
        }
        for (var i = 0; i < multipliers.Length; i++)
            multipliers[i] = double.IsFinite(multipliers[i]) ? multipliers[i] : 0;
        return multipliers;
    }

    /// <summary>Improves multipliers in place and gives the best bound on the cost still to come; stops early once it reaches <paramref name="enough"/>.</summary>
    public double Improve(CoverState state, ReadOnlySpan<int> live, double[] multipliers, double upper, int steps, double enough)
    {
        var best = double.NegativeInfinity;
        var (factor, still) = (2.0, 0);
        multipliers.CopyTo(_trial, 0);
        for (var step = 0; step < steps; step++)
        {
            var bound = Value(state, live);
            if (bound > best + 1e-9 * Math.Abs(bound))
            {
                still = 0;
                best = bound;
                _trial.CopyTo(multipliers, 0);
                foreach (var column in live)
                    Reduced[column] = _trialReduced[column];
                if (best >= enough)
                    break;
            }
            else if (++still >= 8)
            {
                (factor, still) = (factor / 2, 0);
                multipliers.CopyTo(_trial, 0);
            }
            if (!StepOn(state, factor, upper, bound))
                break;
        }
        return best;
    }

    private double Value(CoverState state, ReadOnlySpan<int> live)
    {
        var bound = 0.0;
        for (var i = 0; i < _trial.Length; i++)
        {
            _gradient[i] = Math.Max(0, state.Need[i]);
            bound += _trial[i] * _gradient[i];
        }
        foreach (var column in live)
        {
            double reduced = problem.Columns[column].Cost;
            foreach (var item in problem.Columns[column].Contents)
            {
                if (state.Need[item.Row] > 0)
                    reduced -= Math.Min(item.Count, state.Need[item.Row]) * _trial[item.Row];
            }
            _trialReduced[column] = reduced;
            if (reduced >= 0)
                continue;
            var pieces = state.MostUseful(column);
            bound += reduced * pieces;
            foreach (var item in problem.Columns[column].Contents)
            {
                if (state.Need[item.Row] > 0)
                    _gradient[item.Row] -= (double)pieces * Math.Min(item.Count, state.Need[item.Row]);
            }
        }
        return bound;
    }

    private bool StepOn(CoverState state, double factor, double upper, double bound)
    {
        var square = 0.0;
        for (var i = 0; i < _trial.Length; i++)
        {
            if (state.Need[i] <= 0 || (_trial[i] <= 0 && _gradient[i] < 0))
                _gradient[i] = 0;
            square += _gradient[i] * _gradient[i];
        }
        if (square <= 0)
            return false;
        var length = factor * Math.Max(1.01 * upper - bound, 1e-3 * Math.Max(1, upper)) / square;
        for (var i = 0; i < _trial.Length; i++)
            _trial[i] = Math.Max(0, _trial[i] + length * _gradient[i]);
        return true;
    }
}
