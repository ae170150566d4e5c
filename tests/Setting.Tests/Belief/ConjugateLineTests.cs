using System.Globalization;
using CsCheck;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting.Tests.Belief;

public sealed class ConjugateLineTests
{
    // NIST Statistical Reference Datasets, linear regression, Norris (www.itl.nist.gov/div898/strd/lls/data/Norris.shtml, public domain): with a flat prior and
    // the scatter at the certified residual standard deviation, the posterior is the least-squares line with its certified standard deviations.
    [Fact]
    public void With_a_flat_prior_it_is_the_certified_least_squares_line()
    {
        var sums = default(LineSums);
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Belief", "Norris.csv")).Skip(2))
        {
            var parts = line.Split(',');
            sums = sums.With(double.Parse(parts[1], CultureInfo.InvariantCulture), double.Parse(parts[0], CultureInfo.InvariantCulture));
        }

        var fit = ConjugateLine.Of(sums, new LinePrior(0, 1e7, 1, 1e7), scatter: 0.884796396144373);
        Assert.Equal(36, sums.Count);
        Assert.Equal(-0.262323073774029, fit.Level, 1e-9);
        Assert.Equal(1.00211681802045, fit.Gain, 1e-12);
        Assert.Equal(0.232818234301152, Math.Sqrt(fit.LevelVariance), 1e-10);
        Assert.Equal(0.429796848199937E-03, Math.Sqrt(fit.GainVariance), 1e-13);
    }

    // Bayesian linear regression by matrices, with MathNet.Numerics: posterior (S₀⁻¹ + XᵀX/σ²)⁻¹, and the evidence as the multivariate normal density of
    // all readings, covariance σ²I + X·S₀·Xᵀ. Another way to the same numbers: no precision is added there.
    [Fact]
    public void Posterior_and_evidence_are_those_of_matrix_algebra() =>
        Gen.Select(Gen.Double[-3, 3].Array[1, 6], Gen.Double[0.5, 12], Gen.Double[10, 90], Gen.Double[-20, 20].Array[6]).ForAll((x, scatter, gain, noise) =>
        {
            var prior = new LinePrior(700, 60, gain, 0.25 * gain);
            double[] y = [.. x.Select((turns, i) => 650 + 40 * turns + noise[i])];
            var sums = x.Zip(y).Aggregate(default(LineSums), (s, r) => s.With(r.First, r.Second));
            var fit = ConjugateLine.Of(sums, prior, scatter);

            var m = Matrix<double>.Build;
            var design = m.Dense(x.Length, 2, (i, j) => j == 0 ? 1 : x[i]);
            var spread = m.DenseOfDiagonalArray([prior.LevelSpread * prior.LevelSpread, prior.GainSpread * prior.GainSpread]);
            var covariance = scatter * scatter * m.DenseIdentity(x.Length) + design * spread * design.Transpose();
            var miss = Vector<double>.Build.DenseOfArray(y) - design * Vector<double>.Build.Dense([prior.Level, prior.Gain]);
            var weighed = spread * design.Transpose() * covariance.Inverse();
            var mean = Vector<double>.Build.Dense([prior.Level, prior.Gain]) + weighed * miss;
            var left = spread - weighed * design * spread;
            Assert.Equal(mean[0], fit.Level, 1e-6);
            Assert.Equal(mean[1], fit.Gain, 1e-6);
            Assert.Equal(left[0, 0], fit.LevelVariance, 1e-6 * spread[0, 0]);
            Assert.Equal(left[0, 1], fit.Covariance, 1e-6 * spread[0, 0]);
            Assert.Equal(left[1, 1], fit.GainVariance, 1e-6 * spread[1, 1]);
            var evidence = -0.5 * (x.Length * Math.Log(2 * Math.PI) + Math.Log(covariance.Determinant()) + miss * (covariance.Inverse() * miss));
            Assert.Equal(evidence, fit.LogEvidence, 1e-6 * (1 + Math.Abs(evidence)));
        }, iter: 300);

    [Fact]
    public void A_reading_taken_up_alone_gives_what_all_at_once_give() =>
        Gen.Select(Gen.Double[-2, 2].Array[1, 5], Gen.Double[550, 720].Array[6], Gen.Double[1, 10]).ForAll((x, y, scatter) =>
        {
            var prior = new LinePrior(700, 700, 45, 12);
            var sums = x.Zip(y).Aggregate(default(LineSums), (s, r) => s.With(r.First - x[^1], r.Second));
            var before = ConjugateLine.Of(sums, prior, scatter);
            var all = ConjugateLine.Of(sums.With(0, y[^1]), prior, scatter);
            var strand = new Strand(1, before.Level, before.Gain, before.LevelVariance, before.Covariance, before.GainVariance, scatter, default, 0, default);
            var foretold = strand.LogDensity(y[^1]);
            strand = strand.Read(y[^1]);
            Assert.Equal(all.Level, strand.Level, 1e-7);
            Assert.Equal(all.Gain, strand.Gain, 1e-7);
            Assert.Equal(all.LevelVariance, strand.LevelVariance, 1e-7);
            Assert.Equal(all.Covariance, strand.Covariance, 1e-7);
            Assert.Equal(all.GainVariance, strand.GainVariance, 1e-7);
            var predicted = Normal.PDFLn(before.Level, Math.Sqrt(before.LevelVariance + scatter * scatter), y[^1]);
            Assert.Equal(predicted, foretold, 1e-6);
            Assert.Equal(foretold, all.LogEvidence - before.LogEvidence, 1e-6 * (1 + Math.Abs(all.LogEvidence)));
        }, iter: 300);
}
