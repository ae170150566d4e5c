using Ramwright.Metrology.Text;

namespace Ramwright.Metrology.Tests.Text;

public sealed class RoundedTextTests
{
    // JCGM 100:2008, 7.2.6 (from memory): 10.47 mΩ is stated as 10.5 mΩ with two or three digits; a result goes to the place of its uncertainty
    [Theory]
    [InlineData(0.043, 3)]
    [InlineData(0.0996, 2)]
    [InlineData(0.00099, 5)]
    [InlineData(9.96, 0)]
    [InlineData(32, 0)]
    [InlineData(1234, -2)]
    public void Two_digits_end_at(double uncertainty, int place) => Assert.Equal(place, RoundedText.PlaceOf(uncertainty));

    [Theory]
    [InlineData(85912.4, -2, "85,900")]
    [InlineData(85.9124, 2, "85.91")]
    [InlineData(-0.004, 2, "0.00")]
    [InlineData(-3.146, 2, "−3.15")]
    [InlineData(double.NaN, 2, "not known")]
    public void A_value_is_rounded_to_a_place(double value, int place, string shown) => Assert.Equal(shown, RoundedText.At(value, place));

    [Theory]
    [InlineData(0.0485123, 3, "0.0485")]
    [InlineData(1234.5, 3, "1,230")]
    [InlineData(1.2345e-9, 3, "1.23e−9")]
    [InlineData(0, 3, "0")]
    public void A_value_is_rounded_to_digits(double value, int digits, string shown) => Assert.Equal(shown, RoundedText.Digits(value, digits));
}
