using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Tests.Input;

public sealed class UnitTableTests
{
    // One of each unit against the general-purpose library UnitsNet 5
    [Fact]
    public void Each_unit_is_as_large_as_an_independent_library_says()
    {
        var checkedUnits = new (string Symbol, double Si)[]
        {
            ("mm", UnitsNet.Length.FromMillimeters(1).Meters), ("cm", UnitsNet.Length.FromCentimeters(1).Meters),
            ("µm", UnitsNet.Length.FromMicrometers(1).Meters), ("in", UnitsNet.Length.FromInches(1).Meters),
            ("ml", UnitsNet.Volume.FromMilliliters(1).CubicMeters), ("l", UnitsNet.Volume.FromLiters(1).CubicMeters),
            ("cm³", UnitsNet.Volume.FromCubicCentimeters(1).CubicMeters), ("mm³", UnitsNet.Volume.FromCubicMillimeters(1).CubicMeters),
            ("mm²", UnitsNet.Area.FromSquareMillimeters(1).SquareMeters), ("cm²", UnitsNet.Area.FromSquareCentimeters(1).SquareMeters), ("in²", UnitsNet.Area.FromSquareInches(1).SquareMeters),
            ("g", UnitsNet.Mass.FromGrams(1).Kilograms), ("lb", UnitsNet.Mass.FromPounds(1).Kilograms),
            ("min", UnitsNet.Duration.FromMinutes(1).Seconds), ("h", UnitsNet.Duration.FromHours(1).Seconds), ("days", UnitsNet.Duration.FromDays(1).Seconds),
            ("kN", UnitsNet.Force.FromKilonewtons(1).Newtons), ("lbf", UnitsNet.Force.FromPoundsForce(1).Newtons),
            ("bar", UnitsNet.Pressure.FromBars(1).Pascals), ("MPa", UnitsNet.Pressure.FromMegapascals(1).Pascals),
            ("kPa", UnitsNet.Pressure.FromKilopascals(1).Pascals), ("GPa", UnitsNet.Pressure.FromGigapascals(1).Pascals),
            ("mbar", UnitsNet.Pressure.FromMillibars(1).Pascals), ("psi", UnitsNet.Pressure.FromPoundsForcePerSquareInch(1).Pascals),
            ("N·cm", UnitsNet.Torque.FromNewtonCentimeters(1).NewtonMeters), ("N·mm", UnitsNet.Torque.FromNewtonMillimeters(1).NewtonMeters),
            ("kN·m", UnitsNet.Torque.FromKilonewtonMeters(1).NewtonMeters), ("lbf·ft", UnitsNet.Torque.FromPoundForceFeet(1).NewtonMeters),
            ("lbf·in", UnitsNet.Torque.FromPoundForceInches(1).NewtonMeters),
            ("N/mm", UnitsNet.ForcePerLength.FromNewtonsPerMillimeter(1).NewtonsPerMeter),
            ("°", UnitsNet.Angle.FromDegrees(1).Radians), ("turns", UnitsNet.Angle.FromRevolutions(1).Radians),
            ("°C", UnitsNet.Temperature.FromDegreesCelsius(1).Kelvins), ("°F", UnitsNet.Temperature.FromDegreesFahrenheit(1).Kelvins),
            ("mΩ", UnitsNet.ElectricResistance.FromMilliohms(1).Ohms), ("mA", UnitsNet.ElectricCurrent.FromMilliamperes(1).Amperes),
            ("g/cm³", UnitsNet.Density.FromGramsPerCubicCentimeter(1).KilogramsPerCubicMeter),
            ("cSt", UnitsNet.KinematicViscosity.FromCentistokes(1).SquareMetersPerSecond),
        };
        var apart = checkedUnits.Where(u => !(Math.Abs(UnitTable.Find(u.Symbol)!.ToSi(1) / u.Si - 1) <= 1e-9)).Select(u => $"{u.Symbol}: {UnitTable.Find(u.Symbol)!.ToSi(1):R} here, {u.Si:R} there");
        Assert.Empty(apart);
        Assert.Equal(UnitsNet.ForcePerLength.FromPoundsForcePerInch(1).NewtonsPerMeter, UnitTable.Find("lbf/in")!.ToSi(1), 5e-7); // the library carries this one to nine digits
    }

    [Theory]
    [InlineData("N·m", "Nm", "N.m", "N*m", "N m")]
    [InlineData("cm³", "cm3", "cc", "cm^3", "cm³")]
    [InlineData("µm", "um", "μm", "µm", "um")]
    [InlineData("mΩ", "mohm", "mΩ", "mohm", "mΩ")]
    [InlineData("kg·m²", "kgm2", "kg.m2", "kg*m^2", "kg m²")]
    [InlineData("°C", "degC", "°C", "deg C", "degC")]
    public void Spellings_for_plain_keyboards_are_the_same_unit(string symbol, string a, string b, string c, string d) =>
        Assert.All((string[])[a, b, c, d], s => Assert.Equal(symbol == "cm³" ? 1e-6 : UnitTable.Find(symbol)!.Factor, UnitTable.Find(s)!.Factor));

    [Fact]
    public void Every_dimension_has_a_unit() =>
        Assert.All(Enum.GetValues<Dimension>(), d => Assert.NotEmpty(UnitTable.SymbolsOf(d)));
}
