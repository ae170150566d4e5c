namespace Ramwright.Instruments.Tests;

/// <summary>Units against NIST SP 811 (2008), appendix B.8, and against UnitsNet.</summary>
public sealed class ReadingUnitTests
{
    // NIST SP 811, B.8: psi to pascal 6.894 757 E+03.
    [Fact]
    public void Psi_matches_every_printed_digit() =>
        Assert.Equal(6.894757, Sample.Taken("peak_psi\n10000.0\n").Readings[0].Peak.Pascals / 1e7, 0.0000005);

    [Theory]
    [InlineData("bar", 701.2)]
    [InlineData("MPa", 70.12)]
    [InlineData("kPa", 70120)]
    [InlineData("psi", 10170.1)]
    public void Units_agree_with_a_library(string symbol, double value)
    {
        var quantity = symbol switch
        {
            "bar" => UnitsNet.Pressure.FromBars(value),
            "MPa" => UnitsNet.Pressure.FromMegapascals(value),
            "kPa" => UnitsNet.Pressure.FromKilopascals(value),
            _ => UnitsNet.Pressure.FromPoundsForcePerSquareInch(value),
        };
        var taken = Sample.Taken(FormattableString.Invariant($"peak_{symbol}\n{value}\n"));
        Assert.Equal(quantity.Pascals, taken.Readings[0].Peak.Pascals, quantity.Pascals * 1e-9);
    }

    [Fact]
    public void Every_unit_is_found_by_its_own_symbol() => Assert.All(Enum.GetValues<ReadingUnit>(), u => Assert.Equal(u, ReadingUnits.Find(u.Symbol())));
}
