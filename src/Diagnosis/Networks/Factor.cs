using System.Diagnostics;

namespace Ramwright.Diagnosis.Networks;

/// <summary>A non-negative function of some variables, as a table: the last variable of the scope runs fastest.</summary>
internal sealed class Factor(int[] scope, int[] counts, double[] cells)
{
    /// <summary>Variables by their place in the network, rising.</summary>
    public int[] Scope { get; } = scope;

    public int[] Counts { get; } = counts;

    /// <summary>Probabilities, or products of such.</summary>
    public double[] Cells { get; } = cells;

    /// <summary>The table of a variable, sorted by place, with what is known put in.</summary>
    public static Factor Of(BayesNetwork network, int variable, int[] known)
    {
        var table = network.Tables[variable];
        int[] order = [.. table.Parents, variable];
        var strides = new int[order.Length];
        for (var (i, stride) = (order.Length - 1, 1); i >= 0; stride *= network.Count(order[i]), i--)
            strides[i] = stride;
        int[] free = [.. order.Where(v => known[v] < 0).Order()];
        var from = order.Select((v, i) => known[v] < 0 ? 0 : known[v] * strides[i]).Sum();
        int[] steps = [.. free.Select(v => strides[Array.IndexOf(order, v)])];
        int[] counts = [.. free.Select(network.Count)];
        var cells = new double[counts.Aggregate(1, (a, b) => a * b)];
        var walk = new Odometer(counts, steps);
        for (var i = 0; i < cells.Length; i++, walk.Next())
            cells[i] = table.Rows[from + walk.Offset(0)];
        return new(free, counts, cells);
    }

    /// <summary>The product of some factors with one variable summed out, in one pass; scaled to a greatest cell of 1, the logarithm of the scale given back.</summary>
    public static Factor SumOut(IReadOnlyList<Factor> factors, int variable, BayesNetwork network, out double logScale)
    {
        int[] scope = [.. factors.SelectMany(f => f.Scope).Where(v => v != variable).Distinct().Order()];
        int[] counts = [.. scope.Select(network.Count)];
        var inner = network.Count(variable);
        var cells = new double[counts.Aggregate(1, (a, b) => a * b)];
        var walk = new Odometer(counts, [.. factors.Select(f => f.StridesIn(scope))]);
        var own = factors.Select(f => f.StrideOf(variable)).ToArray();
        for (var i = 0; i < cells.Length; i++, walk.Next())
        {
            var sum = 0.0;
            for (var s = 0; s < inner; s++)
            {
                var product = 1.0;
                for (var f = 0; f < own.Length; f++)
                    product *= factors[f].Cells[walk.Offset(f) + s * own[f]];
                sum += product;
            }

            cells[i] = sum;
        }

        return Scaled(new(scope, counts, cells), out logScale);
    }

    /// <summary>The product of factors that hold at most one variable.</summary>
    public static double[] Product(IEnumerable<Factor> factors, int count)
    {
        var product = Enumerable.Repeat(1.0, count).ToArray();
        foreach (var factor in factors)
        {
            Debug.Assert(factor.Scope.Length <= 1, "Everything else was summed out.");
            for (var s = 0; s < count; s++)
                product[s] *= factor.Cells[factor.Scope.Length == 0 ? 0 : s];
        }

        return product;
    }

    private static Factor Scaled(Factor factor, out double logScale)
    {
        var greatest = factor.Cells.Max();
        logScale = Math.Log(greatest); // -∞ when all cells are zero: what is known contradicts itself
        if (greatest > 0)
        {
            for (var i = 0; i < factor.Cells.Length; i++)
                factor.Cells[i] /= greatest;
        }

        return factor;
    }

    private int StrideOf(int variable)
    {
        var stride = 1;
        for (var i = Scope.Length - 1; i >= 0; stride *= Counts[i], i--)
        {
            if (Scope[i] == variable)
                return stride;
        }

        return 0;
    }

    private int[] StridesIn(int[] scope) => [.. scope.Select(StrideOf)];
}

/// <summary>Counts through all combinations, the last place fastest, and keeps the offsets into several tables.</summary>
internal sealed class Odometer(int[] counts, params int[][] strides)
{
    private readonly int[] digits = new int[counts.Length];
    private readonly int[] offsets = new int[strides.Length];

    public int Offset(int table) => offsets[table];

    public void Next()
    {
        for (var place = digits.Length - 1; place >= 0; place--)
        {
            var carry = ++digits[place] == counts[place];
            for (var t = 0; t < offsets.Length; t++)
                offsets[t] += carry ? -(counts[place] - 1) * strides[t][place] : strides[t][place];
            if (!carry)
                return;
            digits[place] = 0;
        }
    }
}
