using Ramwright.Paper.Drawing;
using Ramwright.Paper.Signs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Tests.Signs;

public sealed class CautionSignTests
{
    [Fact]
    public void Hazards_of_one_kind_share_a_sign_and_the_three_kinds_differ()
    {
        var drawn = Hazards.All.GroupBy(h => h.Sign).ToDictionary(g => g.Key, g => g.Select(h => Shapes(h.Word)).Distinct().Single());
        Assert.Equal(Enum.GetValues<HazardSign>().Length, drawn.Count);
        Assert.Equal(drawn.Count, drawn.Values.Distinct().Count());
    }

    [Theory]
    [InlineData("hot-surface", HazardSign.HotSurface)]
    [InlineData("battery-short", HazardSign.Electricity)]
    [InlineData("crush", HazardSign.General)]
    [InlineData("photo-flash", HazardSign.General)] // a word of a model's own that merely contains 'hot'
    public void A_word_chooses_its_sign_as_a_whole(string word, HazardSign sign) => Assert.Equal(sign, Hazards.SignOf(word));

    private static string Shapes(string hazard) => Svg.Write(CautionSign.For(hazard) with { Title = "" });
}
