using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Seals.Sizes;

namespace Ramwright.Seals.Tests.Sizes;

public sealed class ClassBToleranceTests
{
    // ISO 3601-1:2012, equation (A.1), values computed from the published formula apart from this code
    [Fact]
    public void Tolerance_follows_the_published_formula()
    {
        foreach (var row in PublishedRows.Of("iso3601-class-b-tolerance.csv"))
        {
            var inner = Length.FromMillimetres(double.Parse(row["id_mm"], CultureInfo.InvariantCulture));
            Assert.Equal(double.Parse(row["id_tol_mm"], CultureInfo.InvariantCulture), ClassBTolerance.Of(inner).Millimetres, 0.0051);
        }
    }
}
