using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Tests.Demo;

/// <summary>What each demo model holds, and the traps that between them they must have.</summary>
public sealed class DemoModelContents
{
    private static readonly string[] Hazards =
    [
        "oil-injection", "stored-pressure", "stored-spring-energy", "battery-short", "crush", "flying-parts", "hot-surface", "oil-on-skin", "sharp-edge", "chemical",
    ];

    [Theory]
    [InlineData("corrie-85", 12, 6, "HEES")]
    [InlineData("corrie-120", 8, 4, "HM")]
    [InlineData("skerry-52", 15, 8, "HETG")]
    public void Has_its_runs_its_memory_and_its_fluid(string id, int runs, int memory, string fluid)
    {
        var reading = DemoModels.Reading(id);
        Assert.Equal(runs, reading.Model.Limits.ProofRuns);
        Assert.Equal(memory, reading.Model.Behaviour?.MemoryDepth);
        Assert.Equal(fluid, reading.Model.Fluid?.Class);
        Assert.Contains("invented", reading.Model.Tool.Source, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Has_parts_enough_each_with_name_number_price_and_place(string id)
    {
        var model = DemoModels.Of(id);
        Assert.True(model.Parts.Length >= 35, $"{model.Parts.Length} parts");
        Assert.All(model.Parts, p =>
        {
            Assert.NotNull(p.Number);
            Assert.Equal("EUR", p.Price?.Currency);
            Assert.NotNull(p.Place);
        });
        Assert.Equal(model.Parts.Length, model.Parts.Select(p => p.Number).Distinct(StringComparer.Ordinal).Count());
        Assert.InRange(model.Tools.Length, 6, 12);
        Assert.InRange(model.Postures.Length, 3, 4);
        Assert.Contains(model.Tools, t => t is ShopTool.Made { Dimensions.Count: > 0 });
    }

    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Everything_comes_off_but_the_pump_block(string id)
    {
        var model = DemoModels.Of(id);
        var off = new HashSet<NodeId>(model.States.Where(s => s.Reach is null).Select(s => s.Id));
        int before;
        do
        {
            before = off.Count;
            off.UnionWith(model.States.Where(s => s.Reach is { } r && r.Needs.All(off.Contains)).Select(s => s.Id));
            off.UnionWith(model.Ways().Where(w => w.Way.Needs.All(off.Contains)).Select(w => w.Part.Id));
        }
        while (off.Count > before);
        Assert.Equal("pump-block", Assert.Single(model.Parts, p => !off.Contains(p.Id)).Id.Value);
        Assert.All(model.States, s => Assert.Contains(s.Id, off));
    }

    [Theory]
    [InlineData("corrie-85")]
    [InlineData("corrie-120")]
    [InlineData("skerry-52")]
    public void Has_the_traps_that_every_tool_of_the_kind_has(string id)
    {
        var model = DemoModels.Of(id);
        Assert.Contains(model.Ways(), w => w.Way.HeldBy is { Hand: ThreadHand.Left });
        Assert.Contains(model.Parts, p => p.Id.Value.EndsWith("shims", StringComparison.Ordinal) && p.Count > 1 && p.Inspections.Any(i => i.Measure is not null));
        Assert.Contains(model.Parts, p => p.Name.Contains("lip seal", StringComparison.Ordinal) && p.Fit?.Orientation is not null);
        Assert.Contains(model.Ways(), w => w.Part.Name.Contains("plug", StringComparison.Ordinal) && w.Way.Opens.Contains(Opening.LooseParts));
        Assert.Contains(model.Ways(), w => w.Part.Name.Contains("under the wiper", StringComparison.Ordinal) && w.Way.Needs.Contains(new NodeId("wiper")));
        Assert.Contains(model.Ways(), w => w.Part.IsFastener && w.Way.OutOfSight);
        Assert.Contains(model.Ways(), w => w.Way.Destroys.Contains(w.Part.Id));
        Assert.Contains(model.Parts, p => p.IsFastener && p.Count > 1);
        Assert.Contains(model.Supersessions, s => model.Parts.Any(p => p.Number == s.Old));
        Assert.Contains(model.Kits, k => k.Unfit.Any(u => u.Why.Length > 0));
    }

    [Theory]
    [InlineData("corrie-85", "cap-nut", "wedge-dowel", "rating-plate")]
    [InlineData("corrie-120", "gland-nut", "wedge-dowel", "hose")]
    [InlineData("skerry-52", "reservoir-cover", "relief-seat", "front-tube")]
    public void Has_traps_of_its_own(string id, params string[] parts)
    {
        var model = DemoModels.Of(id);
        Assert.All(parts, p => Assert.NotEmpty(model.Part(p).WaysOff));
        Assert.Contains(model.Ways(), w => w.Way.Opens.Contains(Opening.SpringEnergy));
    }

    [Fact]
    public void Heat_frees_an_adhesive_and_spoils_the_ring_beside_it()
    {
        var hot = DemoModels.Of("corrie-85").Part("relief-cap").WaysOff;
        Assert.Equal(2, hot.Length);
        Assert.All(hot, w => Assert.True(w.HeldBy is { AdhesiveLocked: true }));
        Assert.Contains(hot, w => w.Tool == new ToolId("hot-air") && w.Destroys.Contains(new NodeId("seal-relief-cap")) && w.Cautions.Any(c => c.Hazard == "hot-surface"));
        Assert.Contains(hot, w => w.Risk is { Chance: > 0 } && w.Destroys.IsEmpty);
    }

    [Fact]
    public void A_hose_with_a_bonded_end_comes_off_whole_or_cut()
    {
        var hose = DemoModels.Of("corrie-120").Part("hose");
        Assert.Contains("bonded", hose.Note, StringComparison.Ordinal);
        Assert.Contains(hose.WaysOff, w => w.Destroys.IsEmpty);
        Assert.Contains(hose.WaysOff, w => w.Destroys.Contains(hose.Id));
    }

    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Warns_of_what_can_hurt(string id)
    {
        var model = DemoModels.Of(id);
        Assert.All(model.Cautions(), c => Assert.Contains(c.Hazard, Hazards, StringComparer.Ordinal));
        Assert.Equal("battery-removed, pressure-released", string.Join(", ", model.States.Where(s => s.Isolates).Select(s => s.Id)));
        Assert.Contains(model.FindState(new NodeId("pressure-released"))!.Reach!.Cautions, c => c is { Level: CautionLevel.Danger, Hazard: "oil-injection" });
        Assert.All(model.Ways().Where(w => w.Way.Opens.Contains(Opening.SpringEnergy)), w => Assert.Contains(w.Way.Cautions, c => c.Hazard is "stored-spring-energy" or "flying-parts"));
        Assert.All(model.Checks.Where(c => c.Live), c => Assert.NotEmpty(c.Cautions));
    }
}
