using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Moderation;
using Ramwright.Metrology.Tolerance;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>How far the mean of n runs must lie from a limit, and in units of which scatter.</summary>
internal abstract class Yardstick
{
    private const int Digits = 4;

    private Yardstick() { }

    /// <summary>The yardstick of a series as it was declared; all looks of it use the same.</summary>
    public static Yardstick Of(ProofSeries series)
    {
        if (series.Declared is not Declared.Extension extension)
            return ForANewSeries(series);
        var (accepting, refusing) = Factors.OfEachLook(series.PlannedRuns, extension.MoreRuns, series.Coverage, series.Confidence);
        return new ByOwnScatter(series.Rule, series.Coverage, accepting, refusing, looksTwice: true);
    }

    /// <summary>The yardstick of a plain new series after this one: moderated if this one was.</summary>
    public static Yardstick ForANewSeries(ProofSeries series) => series.Declared is Declared.Moderated moderated
        ? new ByEarlierSeries(moderated.Earlier, series.Coverage, series.Confidence)
        : new ByOwnScatter(series.Rule, series.Coverage, series.Confidence, series.Confidence, looksTwice: false);

    /// <summary>Confidence of the claims at each of two looks; null where there is one look. A probability.</summary>
    public virtual double? ConfidenceOfEachLook => null;

    /// <summary>The scatter that counts, in pascals.</summary>
    public abstract double UsedPascals(double ownPascals, int runs);

    /// <summary>One-sided factor of a claim, in units of <see cref="UsedPascals"/>.</summary>
    public abstract double OneSidedFactor(int runs);

    /// <summary>The factor that decides under the rule of the series, in units of <see cref="UsedPascals"/>.</summary>
    public abstract double DecidingFactor(int runs);

    /// <summary>The share shown at least, by a mean that lies so many <see cref="UsedPascals"/> inside a limit.</summary>
    public abstract double ShareAtLeast(double distance, int runs);

    /// <summary>What the series leaves possible of σ, in pascals, with weights that sum to 1.</summary>
    public abstract (double Deviation, double Weight)[] Possible(double ownPascals, int runs);

    /// <summary>Below this distance from a limit, in units of the tool's own scatter, the share beyond it is shown to be too large.</summary>
    public abstract double RefusingFactor(int runs);

    /// <summary>The share shown at most, by a mean that lies so many of its own standard deviations inside a limit.</summary>
    public abstract double ShareAtMost(double distance, int runs);

    private sealed class ByOwnScatter(DecisionRule rule, double coverage, double accepting, double refusing, bool looksTwice) : Yardstick
    {
        /// <summary>A probability.</summary>
        public override double? ConfidenceOfEachLook => looksTwice ? accepting : null;

        public override double UsedPascals(double ownPascals, int runs) => ownPascals;

        public override double OneSidedFactor(int runs) => Factors.OneSided(runs, coverage, accepting);

        public override double DecidingFactor(int runs) => rule == DecisionRule.TwoSidedInterval ? Factors.TwoSided(runs, coverage, accepting) : OneSidedFactor(runs);

        public override double ShareAtLeast(double distance, int runs) => ContentBound.AtLeast(distance, runs, accepting);

        public override double RefusingFactor(int runs) => Factors.Refusing(runs, coverage, refusing);

        public override double ShareAtMost(double distance, int runs) => ContentBound.AtMost(distance, runs, refusing);

        public override (double Deviation, double Weight)[] Possible(double ownPascals, int runs)
        {
            var grid = new ScatterGrid(runs - 1, 0, Digits); // σ = s/w, w the scatter of a sample: the usual reference prior
            var possible = new (double, double)[grid.Ratios.Length];
            for (var i = 0; i < possible.Length; i++)
                possible[i] = (ownPascals / grid.Ratios[i], grid.Weights[i]);
            return possible;
        }
    }

    /// <summary>Claims by the larger of own and moderated scatter; refusals by the tool's own, which is exact whatever the other tools do.</summary>
    private sealed class ByEarlierSeries(EarlierSeries earlier, double coverage, double confidence) : Yardstick
    {
        public override double UsedPascals(double ownPascals, int runs) => Math.Max(ownPascals, earlier.Population.Moderate(new SeriesScatter(ownPascals, runs - 1)));

        public override double OneSidedFactor(int runs) => earlier.Next(runs).Factor(coverage, confidence);

        public override double DecidingFactor(int runs) => OneSidedFactor(runs);

        public override double ShareAtLeast(double distance, int runs) => earlier.Next(runs).ShareAtLeast(distance, confidence);

        public override double RefusingFactor(int runs) => Factors.Refusing(runs, coverage, confidence);

        public override double ShareAtMost(double distance, int runs) => ContentBound.AtMost(distance, runs, confidence);

        public override (double Deviation, double Weight)[] Possible(double ownPascals, int runs) => earlier.Population.Possible(new SeriesScatter(ownPascals, runs - 1));
    }
}
