using CsCheck;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Metrology.Tests.Tolerance;

public sealed class ContentBoundTests
{
    [Fact]
    public void The_bound_reaches_the_coverage_when_the_distance_reaches_the_factor() =>
        Gen.Select(Gen.Int[2, 200], Gen.Double[0.5, 0.9999], Gen.Double[0.5, 0.999]).ForAll((n, coverage, confidence) =>
            Assert.Equal(coverage, ContentBound.AtLeast(ToleranceFactor.OneSided(n, coverage, confidence), n, confidence), 1e-9), iter: 400);

    [Fact]
    public void More_distance_shows_a_larger_share_and_the_two_bounds_never_cross() =>
        Gen.Select(Gen.Double[-3, 8], Gen.Double[0.01, 2], Gen.Int[2, 60]).ForAll((distance, more, n) =>
        {
            Assert.True(ContentBound.AtLeast(distance, n, 0.95) <= ContentBound.AtLeast(distance + more, n, 0.95));
            Assert.True(ContentBound.AtLeast(distance, n, 0.95) <= ContentBound.AtMost(distance, n, 0.95));
        }, iter: 400);

    [Fact]
    public void Endless_distances_give_certain_shares()
    {
        Assert.Equal(1, ContentBound.AtLeast(double.PositiveInfinity, 12, 0.95), 1e-12);
        Assert.Equal(0, ContentBound.AtMost(double.NegativeInfinity, 12, 0.95), 1e-12);
    }
}
