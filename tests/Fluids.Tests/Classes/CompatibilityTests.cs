using Ramwright.Fluids.Classes;

namespace Ramwright.Fluids.Tests.Classes;

public sealed class CompatibilityTests
{
    // Guidance list from memory of ISO 15380 and seal handbooks: a check against slips of the pen, no proof
    [Fact]
    public void Every_row_of_the_guidance_list_is_answered_so()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", "fluid-elastomer-guidance.csv"))
            .Where(l => l.Length > 0 && !l.StartsWith('#')).Skip(1).Select(l => l.Split(',')).ToList();
        Assert.Equal(32, rows.Count);
        foreach (var row in rows)
        {
            var wanted = row[2] switch { "good" => Bearing.Good, "good to limited" => Bearing.GoodToLimited, "limited" => Bearing.Limited, _ => Bearing.NotSuitable };
            foreach (var fluid in row[0].Split('/'))
                Assert.Equal(wanted, Compatibility.Of(fluid, row[1]).Bearing);
        }
    }

    [Fact]
    public void A_pair_without_guidance_is_unknown() => Assert.Equal(Bearing.Unknown, Compatibility.Of("HFAE", "CR").Bearing);

    [Fact]
    public void Every_fluid_with_guidance_is_a_class() =>
        Assert.All((string[])["HH", "HL", "HM", "HV", "HETG", "HEES", "HEPG", "HEPR", "HFC", "HFDR"], c => Assert.NotNull(FluidClass.Find(c)));
}
