using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using UnitsNet.Units;

namespace Ramwright.Metrology.Tests.Text;

public sealed class QuantityTextTests
{
    // The peer is UnitsNet 5.75.1, a general-purpose library of units.
    [Fact]
    public void Imperial_units_have_the_sizes_that_UnitsNet_gives_them()
    {
        Assert.Equal(ImperialUnits.PascalsPerPsi, UnitsNet.Pressure.From(1, PressureUnit.PoundForcePerSquareInch).Pascals, 1e-9);
        Assert.Equal(ImperialUnits.NewtonsPerPoundForce, UnitsNet.Force.From(1, ForceUnit.PoundForce).Newtons, 1e-12);
        Assert.Equal(ImperialUnits.MetresPerInch, UnitsNet.Length.From(1, LengthUnit.Inch).Meters, 1e-15);
        Assert.Equal(ImperialUnits.KilogramsPerPound, UnitsNet.Mass.From(1, MassUnit.Pound).Kilograms, 1e-12);
        Assert.Equal(ImperialUnits.CubicMetresPerFluidOunce, UnitsNet.Volume.From(1, VolumeUnit.UsOunce).CubicMeters, 1e-14);
    }

    [Theory]
    [InlineData(699.44, null, "699.4 bar", "10,145 psi")]
    [InlineData(700, null, "700 bar", "10,153 psi")]
    [InlineData(700, 1, "700.0 bar", "10,152.6 psi")]
    [InlineData(-0.04, null, "0 bar", "\u22121 psi")]
    [InlineData(-3.2, null, "\u22123.2 bar", "\u221246 psi")]
    public void A_pressure_reads_in_bar_or_psi(double bar, int? decimals, string metric, string imperial)
    {
        Assert.Equal(metric, QuantityText.Show(Pressure.FromBar(bar), UnitSystem.Metric, decimals));
        Assert.Equal(imperial, QuantityText.Show(Pressure.FromBar(bar), UnitSystem.Imperial, decimals));
    }

    [Fact]
    public void Each_quantity_reads_in_the_units_of_its_trade()
    {
        Assert.Equal("1,450 N", QuantityText.Show(Force.FromNewtons(1450), UnitSystem.Metric));
        Assert.Equal("84.9 kN", QuantityText.Show(Force.FromKilonewtons(84.91), UnitSystem.Metric));
        Assert.Equal("19,086 lbf", QuantityText.Show(Force.FromKilonewtons(84.9), UnitSystem.Imperial));
        Assert.Equal("85 N·m", QuantityText.Show(Torque.FromNewtonMetres(85), UnitSystem.Metric));
        Assert.Equal("62.7 lbf·ft", QuantityText.Show(Torque.FromNewtonMetres(85), UnitSystem.Imperial));
        Assert.Equal("71 lbf·in", QuantityText.Show(Torque.FromNewtonMetres(8), UnitSystem.Imperial));
        Assert.Equal("39.3 mm", QuantityText.Show(Length.FromMillimetres(39.3), UnitSystem.Metric));
        Assert.Equal("1.547 in", QuantityText.Show(Length.FromMillimetres(39.3), UnitSystem.Imperial));
        Assert.Equal("95 ml", QuantityText.Show(Volume.FromMillilitres(95), UnitSystem.Metric));
        Assert.Equal("3.21 fl oz", QuantityText.Show(Volume.FromMillilitres(95), UnitSystem.Imperial));
        Assert.Equal("6.4 kg", QuantityText.Show(Mass.FromKilograms(6.4), UnitSystem.Metric));
        Assert.Equal("14.1 lb", QuantityText.Show(Mass.FromKilograms(6.4), UnitSystem.Imperial));
        Assert.Equal("68 °F", QuantityText.Show(Temperature.FromCelsius(20), UnitSystem.Imperial));
        Assert.Equal("30°", QuantityText.Show(Angle.FromTurns(1.0 / 12), UnitSystem.Metric));
        Assert.Equal("679..721 bar", QuantityText.Show(new PressureWindow(Pressure.FromBar(679), Pressure.FromBar(721)), UnitSystem.Metric));
        Assert.Equal("8.5..12 kN", QuantityText.Show(new ForceWindow(Force.FromKilonewtons(8.5), Force.FromKilonewtons(12)), UnitSystem.Metric));
    }

    [Theory]
    [InlineData(0.0005, "0.5 ms")]
    [InlineData(0.004, "4 ms")]
    [InlineData(40, "40 s")]
    [InlineData(150, "2.5 min")]
    [InlineData(3598, "1 h")]
    [InlineData(4800, "1 h 20 min")]
    public void A_time_reads_in_the_unit_that_suits_its_size(double seconds, string shown) =>
        Assert.Equal(shown, QuantityText.Show(TimeSpan.FromSeconds(seconds)));
}
