using System.Diagnostics;

namespace Ramwright.Parts.Covering;

/// <summary>Where a search stands: what is still needed, what may still be taken, what was taken.</summary>
internal sealed class CoverState
{
    private readonly CoverProblem _problem;
    private readonly Stack<int> _barred = [];

    public CoverState(CoverProblem problem)
    {
        _problem = problem;
        Need = [.. problem.Need];
        Taken = new int[problem.Columns.Length];
        Barred = new bool[problem.Columns.Length];
    }

    /// <summary>Units still needed per row; zero or less is covered.</summary>
    public int[] Need { get; }

    public int[] Taken { get; }

    /// <summary>Columns of which no more is taken below this node.</summary>
    public bool[] Barred { get; }

    public long Cost { get; private set; }

    public int BarredCount => _barred.Count;

    /// <summary>Takes so many pieces more, or gives them back when negative.</summary>
    public void Take(int column, int pieces)
    {
        Taken[column] += pieces;
        Cost += pieces * _problem.Columns[column].Cost;
        foreach (var item in _problem.Columns[column].Contents)
            Need[item.Row] -= pieces * item.Count;
        Debug.Assert(Taken[column] >= 0, "More was given back than taken.");
    }

    public void Bar(int column)
    {
        if (Barred[column])
            return;
        Barred[column] = true;
        _barred.Push(column);
    }

    /// <summary>Lets columns in again until only so many are barred.</summary>
    public void UnbarTo(int count)
    {
        while (_barred.Count > count)
            Barred[_barred.Pop()] = false;
    }

    /// <summary>Most pieces of a column that could still be of use; zero when none.</summary>
    public int MostUseful(int column)
    {
        var most = 0;
        foreach (var item in _problem.Columns[column].Contents)
        {
            if (Need[item.Row] > 0)
                most = Math.Max(most, (Need[item.Row] + item.Count - 1) / item.Count);
        }
        return most;
    }
}
