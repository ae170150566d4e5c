using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Networks;

/// <summary>The rows of one table while they are read.</summary>
internal sealed class RowTable(int rows, int own)
{
    private readonly double[]?[] given = new double[]?[rows];
    private double[]? otherwise;

    /// <summary>Probabilities in a row: the states of the variable itself.</summary>
    public int Own => own;

    /// <summary>False when the row was there already.</summary>
    public bool Put(int row, double[] values)
    {
        if (given[row] is not null)
            return false;
        given[row] = values;
        return true;
    }

    public bool Default(double[] values)
    {
        otherwise = values;
        return true;
    }

    /// <summary>The first row that neither stands there nor has a default.</summary>
    public int? FirstMissing() => otherwise is null && Array.IndexOf(given, null) is >= 0 and var row ? row : null;

    /// <summary>All rows one after another, each scaled to a sum of 1.</summary>
    public ImmutableArray<double> Filled() => [.. given.SelectMany(row => Scaled(row ?? otherwise ?? []))];

    private static IEnumerable<double> Scaled(double[] row)
    {
        var sum = row.Sum();
        return row.Select(p => p / sum);
    }
}
