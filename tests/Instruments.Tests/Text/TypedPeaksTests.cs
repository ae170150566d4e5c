namespace Ramwright.Instruments.Tests.Text;

/// <summary>Peaks typed into a form. All values are invented.</summary>
public sealed class TypedPeaksTests
{
    [Theory]
    [InlineData("701.2 698,4 703.0", "701.2 698.4 703")]
    [InlineData("701.2, 698.4, 703", "701.2 698.4 703")]
    [InlineData("701,2; 698,4;703\n700", "701.2 698.4 703 700")]
    [InlineData("  701  ", "701")]
    public void Typed_peaks_are_read(string text, string bars) => Assert.Equal(bars, Assert.IsType<ReadingsAnswer.Taken>(Readings.ReadTyped(text, ReadingUnit.Bar)).Bars());

    [Theory]
    [InlineData("", "1:1+0 no-reading")]
    [InlineData("701,698,703", "1:1+11 ambiguous-separator")]
    [InlineData("701,698", "1:1+7 ambiguous-separator")]
    [InlineData("701.2 7O4\n5000 -3", "1:7+3 bad-number|2:1+4 absurd-value|2:6+2 negative-reading")]
    public void Mistakes_point_at_what_was_typed(string text, string mistakes) =>
        Assert.Equal(mistakes, Assert.IsType<ReadingsAnswer.Refused>(Readings.ReadTyped(text, ReadingUnit.Bar)).Mistakes.Marks());
}
