using CsCheck;
using Ramwright.Metrology.Distributions;
using Peer = MathNet.Numerics.Distributions;

namespace Ramwright.Metrology.Tests.Distributions;

/// <summary>The oracle is MathNet.Numerics 5.0.0, a general-purpose library; its own error is some 1e-13. It loses digits of Student's t below t = 0.01; there ours is checked by its density.</summary>
public sealed class AgainstMathNet
{
    [Fact]
    public void Normal_shares_agree() => Gen.Double[-8, 8].ForAll(x => Near(Peer.Normal.CDF(0, 1, x), Normal.Cdf(x), 1e-12), iter: 2_000);

    [Fact]
    public void Normal_quantile_undoes_the_share() => Gen.Double[-37, 8].ForAll(x => // at +8 the share keeps two digits of its distance to 1
        Near(x, Normal.Quantile(Normal.Cdf(x)), x > 5 ? 0.02 : x > 3 ? 1e-8 : 1e-12), iter: 2_000);

    [Fact]
    public void Chi_squared_shares_agree() => Gen.Select(Gen.Double[0.5, 400], Gen.Double[0.2, 2.5]).ForAll((df, ratio) =>
        Near(Peer.ChiSquared.CDF(df, df * ratio), ChiSquared.Cdf(df * ratio, df), 1e-11), iter: 1_000);

    [Fact]
    public void Chi_squared_quantile_undoes_the_share() => Gen.Select(Gen.Double[0.5, 2_000], Gen.Double[0.0001, 0.9999]).ForAll((df, p) =>
        Near(p, ChiSquared.Cdf(ChiSquared.Quantile(p, df), df), 1e-13), iter: 1_000);

    [Fact]
    public void Student_tails_agree() => Gen.Select(Gen.Double[1, 200], Gen.Double[-6, 12]).ForAll((df, t) =>
        Near(Math.Abs(t) < 0.01 ? 0.5 - t * StudentT.Density(t / 2, df) : 1 - Peer.StudentT.CDF(0, 1, df, t), StudentT.Tail(t, df), Math.Abs(t) < 0.01 ? 1e-7 : 1e-12), iter: 1_000);

    [Fact]
    public void Student_quantile_undoes_the_tail() => Gen.Select(Gen.Double[1, 200], Gen.Double[1e-9, 0.999]).ForAll((df, q) =>
        Near(1, StudentT.Tail(StudentT.TailQuantile(q, df), df) / q, 1e-11), iter: 1_000);

    [Fact]
    public void Log_gamma_agrees() => Gen.Double[0.05, 3_000].ForAll(a =>
        Near(MathNet.Numerics.SpecialFunctions.GammaLn(a), GammaFunction.Log(a), 1e-12 * Math.Max(1, a)), iter: 1_000);

    private static void Near(double expected, double actual, double tolerance) => Assert.Equal(expected, actual, tolerance);
}
