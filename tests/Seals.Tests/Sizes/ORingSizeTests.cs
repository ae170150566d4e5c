using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Seals.Sizes;

namespace Ramwright.Seals.Tests.Sizes;

public sealed class ORingSizeTests
{
    // AS568, inside diameter and section in inches, from memory of the standard; 2.54 cm to the inch, both printed to 0.01 mm.
    [Theory]
    [InlineData(6, 0.114, 0.070)]
    [InlineData(13, 0.426, 0.070)]
    [InlineData(112, 0.487, 0.103)]
    [InlineData(210, 0.734, 0.139)]
    [InlineData(219, 1.296, 0.139)]
    [InlineData(325, 1.475, 0.210)]
    [InlineData(425, 4.475, 0.275)]
    public void Millimetres_are_the_inches_of_the_dash_number(int dash, double innerInches, double sectionInches)
    {
        var size = ORingSize.ByDash(dash)!;
        Assert.Equal(innerInches * 25.4, size.InnerDiameter.Millimetres, 0.0151);
        Assert.Equal(sectionInches * 25.4, size.Section.Millimetres, 0.0051);
    }

    // The published list that travels with the tests: ISO 3601-1:2012 class A
    [Fact]
    public void Every_published_row_is_found_under_both_names_with_its_tolerances()
    {
        var rows = PublishedRows.Of("as568-iso3601-sizes.csv").ToList();
        Assert.Equal(349, rows.Count);
        Assert.Equal(349, ORingSize.All.Length);
        foreach (var row in rows)
        {
            var size = ORingSize.Find($"ISO3601-{row["dash"]}")!;
            Assert.Same(size, ORingSize.Find($"AS568-{row["dash"]}"));
            Assert.Equal(Number(row["id_mm"]), size.InnerDiameter.Millimetres, 1e-9);
            Assert.Equal(Number(row["id_tol_mm"]), size.InnerTolerance.Millimetres, 1e-9);
            Assert.Equal(Number(row["cross_section_mm"]), size.Section.Millimetres, 1e-9);
            Assert.Equal(Number(row["cross_section_tol_mm"]), size.SectionTolerance.Millimetres, 1e-9);
        }
    }

    [Theory]
    [InlineData("ISO3601-051")] // the 0xx series ends at 050
    [InlineData("ISO3601-999")]
    [InlineData("ISO3601-19")]
    [InlineData("219")]
    [InlineData("DIN-219")]
    [InlineData("ISO3601--19")]
    public void A_size_that_no_table_has_is_none(string name) => Assert.Null(ORingSize.Find(name));

    [Fact]
    public void A_measured_ring_finds_its_dash_number_first()
    {
        var found = ORingSize.Candidates(Length.FromMillimetres(32.8), Length.FromMillimetres(3.50), allowance: Length.FromMillimetres(0.1));
        Assert.Equal(219, found[0].Dash);
        Assert.DoesNotContain(found, s => s.Dash == 325);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
