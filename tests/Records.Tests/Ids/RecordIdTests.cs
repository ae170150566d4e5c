using Ramwright.Records.Ids;

namespace Ramwright.Records.Tests.Ids;

public sealed class RecordIdTests
{
    [Theory]
    [InlineData("SM-0417", true)]
    [InlineData("J-1234567", true)]
    [InlineData("ABCD-0001", true)]
    [InlineData("SM-417", false)]
    [InlineData("SM-12345678", false)]
    [InlineData("sm-0417", false)]
    [InlineData("ABCDE-0417", false)]
    [InlineData("-0417", false)]
    [InlineData("SM0417", false)]
    [InlineData("SM-04x7", false)]
    [InlineData("SM-0417 ", false)]
    [InlineData("SM-٠٤١٧", false)]
    [InlineData("../SM-0417", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void A_job_number_is_capitals_a_hyphen_and_digits(string? text, bool valid) => Assert.Equal(valid, JobId.TryParse(text, out _));

    [Theory]
    [InlineData("ada-fenn", true)]
    [InlineData("Ada", false)]
    [InlineData("ada--fenn", false)]
    [InlineData("-ada", false)]
    [InlineData("ada/fenn", false)]
    [InlineData("", false)]
    public void A_person_is_lower_case_with_hyphens(string text, bool valid) => Assert.Equal(valid, PersonId.TryParse(text, out _));

    [Theory]
    [InlineData("C85-20417", true)]
    [InlineData("12/4.B", true)]
    [InlineData("a b", false)]
    [InlineData("<b>", false)]
    [InlineData("--", false)]
    [InlineData("12345678901234567890123456789012345678901", false)]
    public void A_serial_is_as_stamped(string text, bool valid) => Assert.Equal(valid, ToolSerial.TryParse(text, out _));

    [Fact]
    public void What_is_no_id_says_what_one_looks_like() =>
        Assert.Contains("four to seven digits", Assert.Throws<FormatException>(() => JobId.Parse("417")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("00000000-0000-0000-0000-000000000000")]
    [InlineData("x")]
    [InlineData("")]
    public void An_empty_token_is_none(string text) => Assert.False(SubmitToken.TryParse(text, out _));
}
