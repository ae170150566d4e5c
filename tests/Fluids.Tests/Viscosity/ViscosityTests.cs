using System.Globalization;
using Ramwright.Fluids.Viscosity;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Fluids.Tests.Viscosity;

public sealed class ViscosityTests
{
    // ISO 3448:1992, table 1 (six rows of the file are marked as from memory)
    [Fact]
    public void Limits_of_each_grade_are_the_printed_ones()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", "iso-vg-grades.csv")).Where(l => l.Length > 0 && !l.StartsWith('#')).Skip(1).Select(l => l.Split(',')).ToList();
        Assert.Equal(ViscosityGrade.All.Length, rows.Count);
        foreach (var row in rows)
        {
            var grade = ViscosityGrade.Find(int.Parse(row[0], CultureInfo.InvariantCulture))!;
            Assert.Equal(Number(row[1]), grade.LeastCst, 1e-9);
            Assert.Equal(Number(row[3]), grade.MostCst, 1e-9);
        }
    }

    // Worked sheet of the D341 form, viscosity-temperature.json: 32 mm²/s at 40 °C and 5.4 at 100 °C; the sheet takes 273 for 273.15
    [Fact]
    public void Line_and_third_point_of_the_worked_sheet_match_every_printed_digit()
    {
        var line = WaltherLine.Through(32, Temperature.FromSi(40 + 273), 5.4, Temperature.FromSi(100 + 273));
        Assert.Equal(9.5259, line.A, 0.00005);
        Assert.Equal(3.7449, line.B, 0.00005);
        Assert.Equal(8.5, line.CstAt(Temperature.FromSi(80 + 273))!.Value, 0.05);
    }

    [Fact]
    public void Both_given_points_lie_on_the_line()
    {
        var line = WaltherLine.Through(46, Temperature.FromCelsius(40), 6.8, Temperature.FromCelsius(100));
        Assert.Equal(46, line.CstAt(Temperature.FromCelsius(40))!.Value, 1e-9);
        Assert.Equal(6.8, line.CstAt(Temperature.FromCelsius(100))!.Value, 1e-9);
    }

    [Fact]
    public void Outside_the_form_there_is_no_answer()
    {
        var line = WaltherLine.Through(15, Temperature.FromCelsius(40), 3.2, Temperature.FromCelsius(100));
        Assert.Null(line.CstAt(Temperature.FromCelsius(200)));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaltherLine.Through(1, Temperature.FromCelsius(40), 3, Temperature.FromCelsius(100)));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
