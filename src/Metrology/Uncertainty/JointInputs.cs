using System.Collections.Immutable;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>Inputs that move together, directly or by way of others.</summary>
/// <param name="Members">Which inputs, rising.</param>
/// <param name="Factor">Lower triangle L with L·Lᵀ the correlation matrix of the members, row by row.</param>
internal sealed record JointInputs(ImmutableArray<int> Members, double[][] Factor)
{
    /// <summary>The groups of two and more; null when no quantities can be correlated like this.</summary>
    public static ImmutableArray<JointInputs>? Of(int inputs, ImmutableArray<Correlation> correlations)
    {
        var matrix = new double[inputs, inputs];
        for (var i = 0; i < inputs; i++)
            matrix[i, i] = 1;
        foreach (var (first, second, r) in correlations)
        {
            if (first == second || !(Math.Abs(r) <= 1))
                return null;
            matrix[first, second] = matrix[second, first] = r;
        }

        var groups = ImmutableArray.CreateBuilder<JointInputs>();
        foreach (var members in Connected(inputs, correlations))
        {
            if (Triangle(matrix, members) is not { } factor)
                return null;
            groups.Add(new(members, factor));
        }

        return groups.ToImmutable();
    }

    private static IEnumerable<ImmutableArray<int>> Connected(int inputs, ImmutableArray<Correlation> correlations)
    {
        var group = Enumerable.Range(0, inputs).ToArray();
        foreach (var (first, second, _) in correlations)
        {
            var (kept, taken) = (group[first], group[second]);
            for (var i = 0; i < inputs; i++)
                group[i] = group[i] == taken ? kept : group[i];
        }

        return Enumerable.Range(0, inputs).GroupBy(i => group[i]).Where(g => g.Count() > 1).Select(g => g.ToImmutableArray());
    }

    /// <summary>Cholesky's factor; a pivot that rounding leaves at zero makes a zero column, as with r = 1.</summary>
    private static double[][]? Triangle(double[,] matrix, ImmutableArray<int> members)
    {
        const double Rounding = 1e-12;
        var rows = new double[members.Length][];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[i + 1];
            for (var j = 0; j <= i; j++)
            {
                var rest = matrix[members[i], members[j]];
                for (var k = 0; k < j; k++)
                    rest -= rows[i][k] * rows[j][k];
                if (j < i && rows[j][j] == 0 && Math.Abs(rest) > 1e-7)
                    return null;
                if (j == i && rest < -Rounding)
                    return null;
                rows[i][j] = j == i ? (rest < Rounding ? 0 : Math.Sqrt(rest)) : rows[j][j] == 0 ? 0 : rest / rows[j][j];
            }
        }

        return rows;
    }
}
