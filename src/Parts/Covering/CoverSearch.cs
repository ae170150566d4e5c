using System.Collections.Immutable;
using System.Diagnostics;

namespace Ramwright.Parts.Covering;

/// <summary>Exact covering by branch and bound: 'one more of this column' against 'no more of it', under a Lagrangian bound.</summary>
/// <remarks>
/// Each whole-number cover lies on exactly one side of a branch, so nothing is looked at twice. A column whose reduced cost lifts the
/// bound to the best cover known is barred below the node. The order of the search, and so the answer among equals, is fixed.
/// </remarks>
public sealed class CoverSearch
{
    private const int RootSteps = 400;
    private const int NodeSteps = 30;
    private const int DeepestNode = 1_000;

    private readonly CoverProblem _problem;
    private readonly CoverState _state;
    private readonly LagrangeBound _bound;
    private readonly int _nodeLimit;
    private ImmutableArray<int> _best = [];
    private long _bestCost = long.MaxValue;
    private int _nodes;
    private bool _cutShort;

    private CoverSearch(CoverProblem problem, int nodeLimit)
    {
        _problem = problem;
        _nodeLimit = nodeLimit;
        _state = new(problem);
        _bound = new(problem);
    }

    /// <summary>The cheapest cover, or past the limit the best found with a lower bound.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A limit below one.</exception>
    public static CoverSolution Solve(CoverProblem problem, int nodeLimit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nodeLimit, 1);
        return new CoverSearch(problem, nodeLimit).Run();
    }

    private CoverSolution Run()
    {
        int[] live = [.. Enumerable.Range(0, _problem.Columns.Length)];
        Offer(GreedyCover.Complete(_problem, _state, live, c => _problem.Columns[c].Cost));
        var multipliers = _bound.Start(_state);
        var root = 0.0;
        for (var round = 0; round < 8; round++)
        {
            root = Math.Max(root, _bound.Improve(_state, live, multipliers, _bestCost, RootSteps / 8, _bestCost));
            Offer(GreedyCover.Complete(_problem, _state, live, c => _bound.Reduced[c]));
        }
        Search(multipliers, depth: 0);
        var lower = _cutShort ? Math.Min(_bestCost, Whole(root)) : _bestCost;
        return new(_best, _bestCost, lower, _nodes);
    }

    /// <summary>Searches below the present state, and leaves it as it found it.</summary>
    private void Search(double[] inherited, int depth)
    {
        var barred = _state.BarredCount;
        double[] multipliers = [.. inherited];
        while (!_cutShort)
        {
            if (_state.Need.All(n => n <= 0))
            {
                Offer(_state.Taken);
                break;
            }
            if (++_nodes > _nodeLimit || depth > DeepestNode)
            {
                _cutShort = true;
                break;
            }
            var live = Live();
            var bound = _bound.Improve(_state, live, multipliers, _bestCost - _state.Cost, NodeSteps, _bestCost - _state.Cost);
            if (_state.Cost + Whole(bound) >= _bestCost)
                break;
            if (depth < 3)
                Offer(GreedyCover.Complete(_problem, _state, live, c => _bound.Reduced[c]));
            foreach (var column in live)
            {
                if (_bound.Reduced[column] > 0 && _state.Cost + Whole(bound + _bound.Reduced[column]) >= _bestCost)
                    _state.Bar(column);
            }
            var (choice, only) = Branch();
            if (choice < 0)
                break;
            var pieces = only ? Forced(choice) : 1;
            _state.Take(choice, pieces);
            Search(multipliers, depth + 1);
            _state.Take(choice, -pieces);
            if (only)
                break;
            _state.Bar(choice);
        }
        _state.UnbarTo(barred);
    }

    /// <summary>The column to branch on: of the row with the fewest columns left, the one of least reduced cost; −1 when a row has none.</summary>
    private (int Column, bool Only) Branch()
    {
        var (fewest, row) = (int.MaxValue, -1);
        for (var i = 0; i < _state.Need.Length && fewest > 1; i++)
        {
            if (_state.Need[i] <= 0)
                continue;
            var count = 0;
            foreach (var column in _problem.ByRow[i])
                count += _state.Barred[column] ? 0 : 1;
            if (count < fewest)
                (fewest, row) = (count, i);
            if (count == 0)
                return (-1, false);
        }
        Debug.Assert(row >= 0, "A state without a need left does not branch.");
        var (best, least) = (-1, double.PositiveInfinity);
        foreach (var column in _problem.ByRow[row])
        {
            if (!_state.Barred[column] && (best < 0 || _bound.Reduced[column] < least))
                (best, least) = (column, _bound.Reduced[column]);
        }
        return (best, fewest == 1);
    }

    /// <summary>Pieces that a row needs of the only column that gives it.</summary>
    private int Forced(int column) => _problem.Columns[column].Contents
        .Where(g => _state.Need[g.Row] > 0 && _problem.ByRow[g.Row].All(c => c == column || _state.Barred[c]))
        .Max(g => (_state.Need[g.Row] + g.Count - 1) / g.Count);

    private int[] Live() => [.. Enumerable.Range(0, _problem.Columns.Length).Where(c => !_state.Barred[c] && _state.MostUseful(c) > 0)];

    private void Offer(int[]? taken)
    {
        if (taken is null)
            return;
        var cost = taken.Select((n, c) => n * _problem.Columns[c].Cost).Sum();
        if (cost >= _bestCost)
            return;
        _bestCost = cost;
        _best = [.. taken];
    }

    /// <summary>Costs are whole, so a bound is good for the next whole number; the slack covers rounding.</summary>
    private static long Whole(double bound) => (long)Math.Ceiling(bound - 1e-6 - 1e-11 * Math.Abs(bound));
}
