using CsCheck;
using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Tests.Input;

public sealed class QuantityReaderTests
{
    [Theory]
    [InlineData("700 bar", Dimension.Pressure, 7e7)]
    [InlineData("700bar", Dimension.Pressure, 7e7)]
    [InlineData("70 MPa", Dimension.Pressure, 7e7)]
    [InlineData("3e-5 kg·m²", Dimension.Inertia, 3e-5)]
    [InlineData("45 mΩ", Dimension.Resistance, 0.045)]
    [InlineData("-12 mm", Dimension.Length, -0.012)]
    [InlineData("40 °C", Dimension.Temperature, 313.15)]
    public void A_number_and_its_unit_become_SI(string text, Dimension dimension, double si) =>
        Assert.Equal(si, Assert.IsType<TextReading<double>.Good>(QuantityReader.Read(text, dimension)).Value, Math.Abs(si) * 1e-12);

    [Theory]
    [InlineData("700", "missing-unit", 0, 3)]
    [InlineData("", "empty-value", 0, 1)]
    [InlineData("bar", "bad-number", 0, 3)]
    [InlineData("7O4.2 bar", "bad-number", 0, 9)]
    [InlineData("1,450 bar", "bad-number", 0, 9)]
    [InlineData("700 Bar", "unknown-unit", 4, 3)]
    [InlineData("85 kN", "wrong-dimension", 3, 2)]
    [InlineData("1e999 bar", "bad-number", 0, 9)]
    [InlineData("NaN bar", "bad-number", 0, 7)]
    public void What_is_no_pressure_says_why_and_where(string text, string code, int start, int length)
    {
        var fault = Assert.IsType<TextReading<double>.Bad>(QuantityReader.Read(text, Dimension.Pressure)).Fault;
        Assert.Equal((code, start, length), (fault.Code, fault.Start, fault.Length));
    }

    [Theory]
    [InlineData("679 bar .. 721 bar")]
    [InlineData("679..721 bar")]
    [InlineData("67.9 MPa .. 721 bar")]
    public void A_window_takes_a_unit_after_each_limit_or_after_the_last(string text)
    {
        var (low, high) = Assert.IsType<TextReading<(double, double)>.Good>(QuantityReader.ReadWindow(text, Dimension.Pressure)).Value;
        Assert.Equal((679e5, 721e5), (Math.Round(low), Math.Round(high)));
    }

    [Theory]
    [InlineData("85 N·m ± 5 %", 0.05)]
    [InlineData("80 N·m +/- 4 N·m", 0.05)]
    [InlineData("85 N·m", 0)]
    public void A_tolerance_is_a_share_however_it_is_written(string text, double share) =>
        Assert.Equal(share, Assert.IsType<TextReading<(double Value, double Share)>.Good>(QuantityReader.ReadWithTolerance(text, Dimension.Torque)).Value.Share, 1e-12);

    [Fact]
    public void Money_keeps_its_cents_and_needs_its_currency()
    {
        Assert.Equal("18.50 EUR", Assert.IsType<TextReading<Quantities.Money>.Good>(MoneyReader.ReadPerLitre("18.50 EUR/l")).Value.ToString());
        Assert.Equal("missing-unit", Assert.IsType<TextReading<Quantities.Money>.Bad>(MoneyReader.Read("18.50")).Fault.Code);
        Assert.Equal("bad-currency", Assert.IsType<TextReading<Quantities.Money>.Bad>(MoneyReader.Read("18.50 eur")).Fault.Code);
    }

    [Fact]
    public void No_text_makes_it_throw_and_a_fault_lies_within_the_text() => Gen.String.ForAll(
        text =>
        {
            var faults = new[]
            {
                (QuantityReader.Read(text, Dimension.Torque) as TextReading<double>.Bad)?.Fault,
                (QuantityReader.ReadWindow(text, Dimension.Pressure) as TextReading<(double, double)>.Bad)?.Fault,
                (QuantityReader.ReadWithTolerance(text, Dimension.Torque) as TextReading<(double, double)>.Bad)?.Fault,
                (QuantityReader.ReadShare(text) as TextReading<double>.Bad)?.Fault,
                (MoneyReader.Read(text) as TextReading<Quantities.Money>.Bad)?.Fault,
            };
            return faults.All(f => f is null || (f.Start >= 0 && f.Start <= text.Length));
        },
        iter: 2000);
}
