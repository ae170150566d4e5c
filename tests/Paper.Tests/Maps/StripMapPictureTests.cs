using Ramwright.Paper.Drawing;
using Ramwright.Paper.Maps;
using Ramwright.Planning.Map;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Tests.Maps;

public sealed class StripMapPictureTests
{
    private static MapPart Part(string id, double left, MapStatus status, bool renewed = false, bool hidden = false, double? hatch = 45) => new()
    {
        Node = new(id),
        Name = id,
        Status = status,
        IsRenewed = renewed,
        IsOutOfSight = hidden,
        Outline = Outline.Turned,
        Anchor = new(left + 5, 5),
        Bounds = new(left, 0, left + 10, 10),
        Shapes = [new MapShape.Polygon([new(left, 0), new(left + 10, 0), new(left + 10, 10), new(left, 10)], hatch), new MapShape.Stroke([new(left, 5), new(left + 10, 5)])],
    };

    private static readonly StripMapDrawing Drawing = new()
    {
        Bounds = new(0, -10, 100, 30),
        Parts = [Part("housing", 0, MapStatus.Still), Part("cap", 20, MapStatus.Next), Part("ram", 40, MapStatus.Target), Part("seal", 60, MapStatus.ComesOff, renewed: true), Part("pin", 80, MapStatus.ComesOff, hidden: true, hatch: null), Part("pack", 90, MapStatus.Off)],
        Axes = [new(new(-2, 0), new(102, 0))],
        Balloons = [new(1, new("cap"), new(25, 25), 4, new(new(25, 5), new(25, 21)))],
        Links = [],
        ToScale = true,
    };

    [Fact]
    public void Draws_each_part_as_it_stands_in_the_work()
    {
        var groups = StripMapPicture.Of(Drawing).Shapes.OfType<Shape.Group>().ToDictionary(g => g.Words!, g => g.Meaning);
        Assert.Equal(Ink.Next, groups["cap"]);
        Assert.Equal(Ink.Target, groups["ram"]);
        Assert.Equal(Ink.Renew, groups["seal"]);
        Assert.Equal(Ink.Hidden, groups["pin"]);
        Assert.Equal(Ink.Gone, groups["pack"]);
        Assert.Equal(Ink.Body, groups["housing"]);
    }

    [Fact]
    public void Upwards_on_the_tool_is_upwards_on_the_picture()
    {
        var picture = StripMapPicture.Of(Drawing, 208);
        var axis = Assert.Single(picture.Shapes.OfType<Shape.Line>(), l => l.Ink == Ink.Axis);
        var balloon = Assert.Single(picture.Shapes.OfType<Shape.Circle>(), c => c.Ink == Ink.BalloonNext);
        Assert.True(balloon.Centre.Y < axis.From.Y);
        Assert.Equal(2 * 4, balloon.Radius, tolerance: 1e-9); // 200 units for 100 mm
    }

    [Fact]
    public void Keeps_a_height_when_asked() => Assert.Equal(50, StripMapPicture.Of(Drawing, 640, mostHeight: 50).Height, tolerance: 1e-9);

    [Fact]
    public void Legend_names_only_what_occurs()
    {
        var words = StripMapPicture.Legend(Drawing with { Parts = [Part("cap", 20, MapStatus.Next)] }).Shapes.OfType<Shape.Text>().Select(t => t.Words);
        Assert.Equal(["next"], words);
    }
}
