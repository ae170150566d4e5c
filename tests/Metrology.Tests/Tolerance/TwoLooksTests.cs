using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Metrology.Tests.Tolerance;

public sealed class TwoLooksTests
{
    // Pocock's boundary for two looks of equal size, one-sided 5 % and 2.5 %: 1.875 and 2.178 standard errors (Jennison & Turnbull, Group Sequential
    // Methods, 2000, Table 2.1; from memory). With many readings the noncentral t of a tolerance bound is normal, so its confidence is Φ of that.
    [Theory]
    [InlineData(0.95, 1.875)]
    [InlineData(0.975, 2.178)]
    public void With_many_readings_each_look_is_Pococks(double confidence, double standardErrors) =>
        Assert.Equal(standardErrors, Normal.Quantile(TwoLooks.ConfidenceOfEach(1_000, 1_000, 0.95, confidence)), 0.002);

    // Oracle: two looks drawn at random, 200,000 seeded series, four standard errors
    [Theory]
    [InlineData(12, 12, 0.95, 0.95)]
    [InlineData(8, 4, 0.95, 0.95)]
    [InlineData(5, 20, 0.90, 0.99)]
    [InlineData(12, 12, 0.05, 0.95)] // the mirror image: a refusal
    [InlineData(12, 1, 0.95, 0.90)]
    public void The_two_looks_together_accept_as_often_as_they_say(int first, int more, double coverage, double confidence)
    {
        var each = TwoLooks.ConfidenceOfEach(first, more, coverage, confidence);
        double k1 = ToleranceFactor.OneSided(first, coverage, each), k2 = ToleranceFactor.OneSided(first + more, coverage, each), z = Normal.Quantile(coverage);
        Assert.InRange(each, confidence, 1 - 0.5 * (1 - confidence));
        Assert.Equal(1 - confidence, TwoLooks.Accepted(first, more, coverage, k1, k2), 1e-8);
        var random = new Random(20_241_011);
        const int Draws = 200_000;
        var accepted = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            double sum = 0, squares = 0;
            var taken = false;
            for (var i = 1; i <= first + more && !taken; i++)
            {
                var x = Normal.Quantile(1 - random.NextDouble());
                sum += x;
                squares += x * x;
                if (i == first || i == first + more)
                    taken = sum / i + z >= (i == first ? k1 : k2) * Math.Sqrt((squares - sum * sum / i) / (i - 1));
            }

            accepted += taken ? 1 : 0;
        }

        Assert.Equal(1 - confidence, (double)accepted / Draws, 4 * Math.Sqrt(confidence * (1 - confidence) / Draws));
    }

    [Fact]
    public void A_first_look_that_asks_the_impossible_leaves_the_second_alone()
    {
        var k = ToleranceFactor.OneSided(24, 0.95, 0.95);
        Assert.Equal(0.05, TwoLooks.Accepted(12, 12, 0.95, 1e3, k), 2e-6);
        Assert.Equal(0.05, TwoLooks.Accepted(12, 12, 0.95, ToleranceFactor.OneSided(12, 0.95, 0.95), 1e3), 2e-6);
    }

    [Theory]
    [InlineData(1, 12)]
    [InlineData(12, 0)]
    [InlineData(12, 1_001)]
    public void What_no_plan_can_have_is_refused(int first, int more) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoLooks.ConfidenceOfEach(first, more, 0.95, 0.95));
}
