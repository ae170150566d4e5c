using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Blocks of trials: run many at a time, counted one after the other.</summary>
internal sealed class BlockSeries(Budget budget, MonteCarloAsk ask, int size)
{
    private readonly List<double[]> blocks = [];
    private readonly List<BlockFigures> figures = [];
    private readonly double[] sums = new double[4];
    private readonly double[] squares = new double[4];
    private double[] firsts = [];
    private Gathered all;

    /// <summary>Whether the interval of each block is worked out, as the adaptive procedure needs it.</summary>
    public bool EndsOfEachBlock { get; init; } = true;

    /// <summary>Blocks run.</summary>
    public int Ready => blocks.Count;

    /// <summary>Blocks counted.</summary>
    public int Counted { get; private set; }

    /// <summary>Trials without a finite result, in the blocks counted.</summary>
    public int Failed { get; private set; }

    /// <summary>Standard deviation of all results counted, a value in the result's unit.</summary>
    public double Standard => all.Standard;

    /// <summary>Twice the standard deviation of the least settled figure, a value in the result's unit.</summary>
    public double OwnError { get; private set; }

    /// <summary>Runs blocks on all cores until there are so many.</summary>
    public void Grow(int to)
    {
        var from = blocks.Count;
        for (var i = from; i < to; i++)
        {
            blocks.Add(new double[size]);
            figures.Add(default);
        }

        var found = new BlockFigures[to - from];
        Parallel.For(from, to, () => (Block: new TrialBlock(budget, ask.Seed), Copy: new double[size]), (i, _, own) =>
        {
            own.Block.Run(i, blocks[i]);
            found[i - from] = Measure(blocks[i], own.Copy);
            return own;
        }, _ => { });
        for (var i = from; i < to; i++)
            figures[i] = found[i - from];
    }

    /// <summary>Takes the next block into account.</summary>
    public void CountNext()
    {
        var next = figures[Counted++];
        Failed += next.Failed;
        all = all.With(next, size);
        if (!EndsOfEachBlock)
            return;
        double[] four = [next.Mean, next.Standard, next.Low, next.High];
        if (Counted == 1)
            firsts = four;
        OwnError = 0;
        for (var i = 0; i < four.Length; i++)
        {
            var d = four[i] - firsts[i]; // from the first block's figure, so that a large common part costs no digits
            sums[i] += d;
            squares[i] += d * d;
            var spread = Math.Max(0, squares[i] - sums[i] * sums[i] / Counted) / ((double)Counted * Math.Max(1, Counted - 1));
            OwnError = Math.Max(OwnError, 2 * Math.Sqrt(spread));
        }
    }

    /// <summary>The figures of all trials of the blocks counted.</summary>
    public MonteCarloFigures Figures()
    {
        var results = new double[Counted * size];
        for (var i = 0; i < Counted; i++)
            blocks[i].CopyTo(results, i * size);
        var (low, high) = OrderedEnds.Interval(results, ask.Coverage, ask.Interval);
        return new(all.Mean, all.Standard, low, high, results.Length, OwnError);
    }

    private BlockFigures Measure(double[] results, double[] copy)
    {
        var failed = 0;
        foreach (var r in results)
            failed += double.IsFinite(r) ? 0 : 1;
        if (failed > 0)
            return new(failed, 0, 0, 0, 0);
        var moments = Moments.Of(results);
        if (!EndsOfEachBlock)
            return new(0, moments.Mean, moments.StandardDeviation, 0, 0);
        results.CopyTo(copy, 0);
        var (low, high) = OrderedEnds.Interval(copy, ask.Coverage, ask.Interval);
        return new(0, moments.Mean, moments.StandardDeviation, low, high);
    }

    private readonly record struct BlockFigures(int Failed, double Mean, double Standard, double Low, double High);

    /// <summary>Mean and spread of blocks put together (T. F. Chan, G. H. Golub &amp; R. J. LeVeque, Am. Stat. 37 (1983) 242).</summary>
    private readonly record struct Gathered(double Count, double Mean, double Squares)
    {
        /// <summary>A value in the result's unit.</summary>
        public double Standard => Count > 1 ? Math.Sqrt(Squares / (Count - 1)) : 0;

        public Gathered With(BlockFigures block, int size)
        {
            var d = block.Mean - Mean;
            var count = Count + size;
            return new(count, Mean + d * size / count, Squares + block.Standard * block.Standard * (size - 1) + d * d * Count * size / count);
        }
    }
}
