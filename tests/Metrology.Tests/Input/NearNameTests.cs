using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Tests.Input;

public sealed class NearNameTests
{
    // Damerau (1964): insertion, deletion, substitution, transposition of neighbours; 'kitten' to 'sitting' is the textbook's three edits
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ab", "ba", 1)]
    [InlineData("cap-nut", "cap-nut", 0)]
    [InlineData("oring", "o-ring", 1)]
    [InlineData("Bar", "bar", 0)]
    public void Edits_are_counted_as_the_textbook_does(string a, string b, int edits) => Assert.Equal(edits, NearName.Edits(a, b));

    [Fact]
    public void The_nearest_is_offered_and_a_far_one_is_not()
    {
        Assert.Equal("o-ring-ram-rod", NearName.Find("oring-ram-rod", ["strainer", "o-ring-ram-rod", "o-ring-cap"]));
        Assert.Null(NearName.Find("strainer", ["cap-nut", "head"]));
    }
}
