using Ramwright.Metrology.Distributions;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting.Tests.Belief;

public sealed class StrandTests
{
    // Abramowitz & Stegun state an error below 7.5e-8 for 26.2.17; the distribution in Metrology is good to the last digits.
    [Fact]
    public void The_quick_normal_share_is_as_good_as_printed()
    {
        for (var z = -9.0; z <= 9; z += 0.01)
            Assert.Equal(Normal.Cdf(z), Strand.Share(z), 7.5e-8);
    }
}
