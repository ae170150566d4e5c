namespace Ramwright.Metrology.Moderation;

/// <summary>One of the populations that the earlier series leave possible.</summary>
/// <param name="Weight">How well it agrees with them, as a share of the best.</param>
/// <param name="AlikeDegrees">ν₀, degrees of freedom of the spread of 1/σ² among tools: large when they scatter alike.</param>
/// <param name="LogScale">ln s₀, the logarithm of the scatter of a typical tool.</param>
internal readonly record struct PossiblePopulation(double Weight, double AlikeDegrees, double LogScale);

/// <summary>The populations of tools that a set of earlier series leaves possible, as nodes and weights.</summary>
/// <remarks>
/// Model of G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 3 (2004) art. 3: ν₀s₀²/σ² is χ² of ν₀ degrees of freedom among tools, so that an earlier
/// s² is s₀²·F(ν, ν₀). Nothing is fitted and then taken as known: ln s₀ is flat, which makes the answer the same in every unit, and
/// w = ν₀/(ν₀ + 10), the weight of a population beside ten degrees of freedom of one's own, has the beta density of <see cref="TiltLow"/> and
/// <see cref="TiltHigh"/>, chosen by simulation, as is <see cref="NextSeries.Spent"/>, so that the false accept is nearly the same for every ν₀ and below its bound.
/// The likelihood is strictly concave in ln s₀²; its step is 1.2 of its own standard deviations, where the trapezoidal rule errs by e^(−2π²/1.44), 1e-6.
/// </remarks>
internal static class PopulationPosterior
{
    private const int Weights = 16; // values of w
    private const double Middle = 10; // ν₀ at w = ½
    private const double TiltLow = 3;
    private const double TiltHigh = 0.3;
    private const double Farthest = 11; // e^−11 of the best is left out

    public static IReadOnlyList<PossiblePopulation> Of(ReadOnlySpan<SeriesScatter> earlier)
    {
        var series = earlier.ToArray();
        var found = new List<PossiblePopulation>(); // weight still as a logarithm
        var mode = series.Average(s => 2 * Math.Log(s.Deviation));
        for (var i = 0; i < Weights; i++)
        {
            var w = (i + 0.5) / Weights;
            var likelihood = new ScaleLikelihood(series, Middle * w / (1 - w));
            mode = likelihood.Mode(mode);
            var step = 1.2 * likelihood.Width(mode);
            var front = (TiltLow - 1) * Math.Log(w) + (TiltHigh - 1) * Math.Log(1 - w) + Math.Log(step);
            var top = likelihood.At(mode);
            Walk(mode, step);
            Walk(mode - step, -step);

            void Walk(double from, double by)
            {
                for (var t = from; ; t += by)
                {
                    var height = likelihood.At(t);
                    if (!(height > top - Farthest))
                        return;
                    found.Add(new(front + height, likelihood.AlikeDegrees, 0.5 * t));
                }
            }
        }

        var best = found.Max(p => p.Weight);
        return [.. found.Where(p => p.Weight > best - Farthest).Select(p => p with { Weight = Math.Exp(p.Weight - best) })];
    }
}
