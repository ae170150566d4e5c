using System.Globalization;
using System.Text.RegularExpressions;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Tests.Demo;

/// <summary>Rings, rubber, threads and the drawing of the demo models against published tables.</summary>
public sealed partial class DemoModelEngineering
{
    // AS568 / ISO 3601-1:2012 dash sizes, Seals.Tests/Published/as568-iso3601-sizes.csv
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Every_ring_size_exists(string id)
    {
        var known = Rows("Seals.Tests", "as568-iso3601-sizes.csv").Select(r => int.Parse(r[0], CultureInfo.InvariantCulture)).ToHashSet();
        var rings = DemoModels.Of(id).Parts.Where(p => p.Size is not null).ToList();
        Assert.NotEmpty(rings);
        Assert.All(rings, p => Assert.Contains(Assert.IsType<SealSize.Dash>(p.Size).Number, known));
    }

    // Squeeze of a moving O-ring of 3.53 mm section: 9 to 17 %, stretch to 5 %; handbook design chart for dynamic seals.
    [Fact]
    public void The_ram_seal_of_the_Corrie_85_fits_its_groove_and_its_bore()
    {
        var model = DemoModels.Of("corrie-85");
        var seal = model.Part("seal-ram");
        var row = Rows("Seals.Tests", "as568-iso3601-sizes.csv").Single(r => int.Parse(r[0], CultureInfo.InvariantCulture) == ((SealSize.Dash)seal.Size!).Number);
        var (insideMm, sectionMm) = (Number(row[3]), Number(row[5]));
        Assert.Equal(model.Behaviour!.Ram!.Diameter.Millimetres, 2 * seal.Place!.Outer.Millimetres, tolerance: 1e-6);
        Assert.InRange(1 - (seal.Place.Outer - seal.Place.Inner).Millimetres / sectionMm, 0.09, 0.17);
        Assert.InRange(2 * seal.Place.Inner.Millimetres / insideMm - 1, 0, 0.05);
    }

    // Usual guidance on elastomer and fluid class, Fluids.Tests/Published/fluid-elastomer-guidance.csv (from memory of ISO 15380 and handbooks).
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void No_ring_is_of_a_rubber_that_its_oil_spoils(string id)
    {
        var model = DemoModels.Of(id);
        var guidance = Rows("Fluids.Tests", "fluid-elastomer-guidance.csv")
            .Where(r => $"/{r[0]}/".Contains($"/{model.Fluid!.Class}/", StringComparison.Ordinal)).ToDictionary(r => r[1], r => r[2], StringComparer.Ordinal);
        var judged = model.Parts.Where(p => p.Material is not null && guidance.ContainsKey(p.Material)).ToList();
        Assert.True(judged.Count >= 8, $"only {judged.Count} rings judged");
        Assert.All(judged, p => Assert.False(guidance[p.Material!] == "not suitable", $"{p.Id}: {p.Material} in {model.Fluid!.Class}"));
        Assert.All(judged.Where(p => p.Size is not null), p => Assert.StartsWith("good", guidance[p.Material!], StringComparison.Ordinal));
    }

    // Tightening torque of plain metric screws, class 12.9 at most; Published/tightening-torques.csv
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void No_metric_screw_is_tightened_beyond_its_class(string id)
    {
        var strongest = Rows("ServiceModels.Tests", "tightening-torques.csv").ToDictionary(r => r[0], r => Number(r[6]), StringComparer.Ordinal);
        var screws = DemoModels.Of(id).Parts.Where(p => Thread().IsMatch(p.Name)).ToList();
        Assert.NotEmpty(screws);
        Assert.All(screws, p => Assert.InRange(p.Fit!.Torque!.Torque.NewtonMetres, 1, strongest[Thread().Match(p.Name).Groups[1].Value]));
    }

    // A torque wrench is good to 4 or 6 % (ISO 6789-1, from memory).
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Torques_have_a_tolerance_that_a_wrench_can_keep(string id) =>
        Assert.All(DemoModels.Of(id).Parts.Where(p => p.Fit?.Torque is not null), p => Assert.InRange(p.Fit!.Torque!.Tolerance, 0.04, 0.10));

    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void On_the_axis_nothing_runs_through_anything_else(string id)
    {
        var parts = DemoModels.Of(id).Parts.Where(p => p.Place is { Offset.Si: 0 }).ToList();
        var clashes = from a in parts
                      from b in parts
                      where string.CompareOrdinal(a.Id.Value, b.Id.Value) < 0
                      let along = Shared(a.Place!.From.Millimetres, a.Place!.To.Millimetres, b.Place!.From.Millimetres, b.Place!.To.Millimetres)
                      let across = Shared(a.Place!.Inner.Millimetres, a.Place!.Outer.Millimetres, b.Place!.Inner.Millimetres, b.Place!.Outer.Millimetres)
                      where along > 0.01 && across > 0.01 && !Within(a.Place!, b.Place!) && !Within(b.Place!, a.Place!)
                      select $"{a.Id} and {b.Id}: {along:F1} mm along, {across:F1} mm across";
        Assert.Empty(clashes);
    }

    private static double Shared(double a1, double a2, double b1, double b2) => Math.Min(a2, b2) - Math.Max(a1, b1);

    private static bool Within(MapPlace inner, MapPlace outer) =>
        inner.From >= outer.From && inner.To <= outer.To && inner.Inner >= outer.Inner && inner.Outer <= outer.Outer;

    private static IEnumerable<string[]> Rows(string room, string file) =>
        File.ReadLines(Path.Combine(Repository.Folder("tests"), room, "Published", file)).Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split(','));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"screws? .*\b(M\d)\b")]
    private static partial Regex Thread();
}
