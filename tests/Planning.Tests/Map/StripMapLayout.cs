using CsCheck;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Map;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;
using static Ramwright.Planning.Tests.Models;

namespace Ramwright.Planning.Tests.Map;

public sealed class StripMapLayout
{
    private static Gen<ServiceModel> Placed(int most) => Gen.Select(Gen.Int[1, most], Gen.UInt).Select((count, seed) =>
    {
        var random = new Random(unchecked((int)seed));
        return Of([.. Enumerable.Range(0, count).Select(i => Part($"p{i}", Way(1, i == 0 ? "" : $"p{random.Next(i)}")) with { Place = Place(random) })]);
    });

    private static MapPlace Place(Random random)
    {
        var (from, inner) = (random.Next(0, 300), random.Next(0, 20));
        return new MapPlace(Mm(from), Mm(from + random.Next(0, 60)), Mm(inner), Mm(inner + random.Next(0, 20)), Mm(random.Next(3) == 0 ? random.Next(-60, 60) : 0))
        {
            Outline = (Outline)random.Next(Enum.GetValues<Outline>().Length),
        };
    }

    private static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    [Fact]
    public void Leaders_do_not_cross_and_balloons_do_not_overlap() => Placed(60).ForAll(model =>
    {
        var balloons = StripMap.Layout(model).Balloons;
        Assert.Equal(model.Parts.Length, balloons.Length);
        for (var i = 0; i < balloons.Length; i++)
        {
            for (var j = i + 1; j < balloons.Length; j++)
            {
                var (a, b) = (balloons[i], balloons[j]);
                Assert.True(new System.Numerics.Complex(a.Centre.X - b.Centre.X, a.Centre.Y - b.Centre.Y).Magnitude >= a.Radius + b.Radius - 1e-6);
                Assert.False(Cross(a.Leader, b.Leader), $"leaders {a.Number} and {b.Number} cross");
            }
        }
    }, iter: 200);

    [Fact]
    public void Everything_lies_within_the_bounds() => Placed(40).ForAll(model =>
    {
        var map = StripMap.Layout(model);
        foreach (var box in map.Parts.Select(p => p.Bounds))
            Assert.Equal(map.Bounds, map.Bounds.Including(box));
        foreach (var balloon in map.Balloons)
        {
            Assert.InRange(balloon.Centre.X, map.Bounds.Left + balloon.Radius - 1e-9, map.Bounds.Right - balloon.Radius + 1e-9);
            Assert.InRange(balloon.Centre.Y, map.Bounds.Bottom + balloon.Radius - 1e-9, map.Bounds.Top - balloon.Radius + 1e-9);
        }
    }, iter: 200);

    [Fact]
    public void A_leader_starts_on_its_part() => Placed(40).ForAll(model =>
    {
        var map = StripMap.Layout(model);
        foreach (var balloon in map.Balloons)
        {
            var box = map.Parts.Single(p => p.Node == balloon.Node).Bounds;
            Assert.InRange(balloon.Leader.From.X, box.Left, box.Right);
            Assert.InRange(balloon.Leader.From.Y, box.Bottom - 1e-9, box.Top + 1e-9);
        }
    }, iter: 200);

    [Fact]
    public void Touching_cut_parts_are_hatched_differently()
    {
        var model = Of(
            Part("body", Way(1)) with { Place = new MapPlace(Mm(0), Mm(100), Mm(20), Mm(30), Mm(0)) { Outline = Outline.Housing } },
            Part("liner", Way(1)) with { Place = new MapPlace(Mm(0), Mm(100), Mm(15), Mm(20), Mm(0)) { Outline = Outline.Turned } });
        var hatches = StripMap.Layout(model).Parts.SelectMany(p => p.Shapes).OfType<MapShape.Polygon>().Select(s => s.HatchDegrees).Distinct();
        Assert.Equal([45, 135], hatches.Order());
    }

    [Fact]
    public void Shows_what_is_off_what_is_next_what_is_wanted_and_what_is_renewed()
    {
        var model = Of(
            Part("cover", Way(1)),
            Part("screw", Way(1, "cover") with { OutOfSight = true }),
            Part("piston", Way(1, "screw")),
            Part("seal", Way(1, "piston")) with { Renew = RenewalRule.WhenDisturbed },
            Part("frame"));
        var plan = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(new StripJob { Model = model, Rates = Models.Rates, Targets = Ids("seal") })).Plan;
        var map = StripMap.Layout(model, plan, [.. Ids("cover")]);
        Assert.Equal(
            "cover Off, frame Still, piston ComesOff, screw Next, seal Target",
            string.Join(", ", map.Parts.OrderBy(p => p.Node.Value, StringComparer.Ordinal).Select(p => $"{p.Node} {p.Status}")));
        Assert.Equal([Id("seal")], map.Parts.Where(p => p.IsRenewed).Select(p => p.Node));
        Assert.Equal([Id("screw")], map.Parts.Where(p => p.IsOutOfSight).Select(p => p.Node));
        Assert.Equal("1 cover, 2 screw, 3 piston, 4 seal", string.Join(", ", map.Balloons.Select(b => $"{b.Number} {b.Node}")));
        Assert.Equal(3, map.Links.Length);
        Assert.False(map.ToScale);
    }

    [Fact]
    public void Without_places_what_comes_off_first_lies_to_the_right()
    {
        var model = Of(Part("outer", Way(1)), Part("middle", Way(1, "outer")), Part("inner", Way(1, "middle")));
        var map = StripMap.Layout(model);
        double X(string id) => map.Parts.Single(p => p.Node == Id(id)).Anchor.X;
        Assert.True(X("outer") > X("middle") && X("middle") > X("inner"));
    }

    [Fact]
    public void A_model_without_parts_gives_an_empty_map() => Assert.Empty(StripMap.Layout(Of()).Parts);

    private static bool Cross(MapLine a, MapLine b)
    {
        static double Side(MapLine l, MapPoint p) => (l.To.X - l.From.X) * (p.Y - l.From.Y) - (l.To.Y - l.From.Y) * (p.X - l.From.X);
        const double Touch = 1e-6;
        return Side(a, b.From) * Side(a, b.To) < -Touch && Side(b, a.From) * Side(b, a.To) < -Touch;
    }
}
