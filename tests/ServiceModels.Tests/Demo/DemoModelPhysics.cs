using System.Text.Json;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Tests.Demo;

/// <summary>The figures of the demo models agree with each other as they would in a tool.</summary>
public sealed class DemoModelPhysics
{
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void Force_is_pressure_times_area_within_one_percent(string id)
    {
        var model = DemoModels.Of(id);
        var area = Area.OfCircle(model.Behaviour!.Ram!.Diameter);
        Assert.Equal(1, (model.Limits.Pressure.Min * area) / model.Limits.Force!.Value.Min, tolerance: 0.01);
        Assert.Equal(1, (model.Limits.Pressure.Max * area) / model.Limits.Force!.Value.Max, tolerance: 0.01);
    }

    // Poppet in balance: p·(contact area − stem area) = rate × compression. Common practice.
    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void The_relief_opens_at_nominal_within_the_reach_of_its_screw(string id)
    {
        var model = DemoModels.Of(id);
        var relief = model.Behaviour!.Relief!;
        var net = NetArea(relief);
        var barPerTurn = (relief.SpringRate * relief.Pitch / net).Bar;
        Assert.InRange(barPerTurn, 30, 60);
        Assert.True(relief.Reach!.Value.Holds(model.Limits.Nominal) && relief.Reach.Value.Holds(model.Limits.Maximum));
        Assert.InRange((relief.Reach.Value.Max - relief.Reach.Value.Min).Bar / barPerTurn, 4, 10);

        var compressedMetres = (model.Limits.Nominal * net).Newtons / relief.SpringRate.NewtonsPerMetre;
        var freeMetres = InstalledMetres(model, "relief-spring") + compressedMetres;
        var limits = model.Part("relief-spring").Inspections.Single(i => i.Measure is not null).Measure!;
        Assert.InRange(freeMetres, limits.Least!.Value.Metres, limits.Most!.Value.Metres);
    }

    // Closing over opening pressure is the seat's net area over the area that the open poppet shows to the oil.
    [Theory]
    [InlineData("corrie-85")]
    [InlineData("skerry-52")]
    public void The_closing_ratio_is_that_of_the_poppet_drawn(string id)
    {
        var model = DemoModels.Of(id);
        var open = Area.FromSquareMetres(NetArea(model.Behaviour!.Relief!).SquareMetres / model.Behaviour.Relief!.ClosingRatio!.Value);
        var drawn = Area.OfCircle(2 * model.Part("relief-poppet").Place!.Outer);
        Assert.Equal(1, drawn / open, tolerance: 0.02);
    }

    [Theory]
    [InlineData("corrie-85")]
    [InlineData("skerry-52")]
    public void The_return_spring_brings_the_ram_home_before_the_relief_closes(string id)
    {
        var behaviour = DemoModels.Of(id).Behaviour!;
        var closing = behaviour.Relief!.ClosingRatio!.Value * DemoModels.Of(id).Limits.Nominal;
        var net = behaviour.Ram!.SpringPreload!.Value - behaviour.Ram.DryFriction!.Value;
        Assert.True(net / Area.OfCircle(behaviour.Ram.Diameter) > closing);
    }

    [Theory]
    [InlineData("corrie-85", "return-spring-outer")]
    [InlineData("corrie-120", "return-spring")]
    [InlineData("skerry-52", "return-spring")]
    public void The_return_spring_has_the_free_length_that_its_preload_asks(string id, string spring)
    {
        var model = DemoModels.Of(id);
        var ram = model.Behaviour!.Ram!;
        var freeMetres = InstalledMetres(model, spring) + ram.SpringPreload!.Value.Newtons / ram.SpringRate!.Value.NewtonsPerMetre;
        var least = model.Part(spring).Inspections.Single(i => i.Measure is not null).Measure!.Least!.Value.Metres;
        Assert.InRange(freeMetres, least, least * 1.03);
        Assert.True(InstalledMetres(model, spring) > 2.5 * ram.Stroke.Metres, "Room for the coils at full stroke");
    }

    [Theory]
    [MemberData(nameof(DemoModels.Ids), MemberType = typeof(DemoModels))]
    public void The_tool_holds_the_oil_that_a_stroke_takes(string id)
    {
        var model = DemoModels.Of(id);
        var ram = model.Behaviour!.Ram!;
        var stroke = Volume.FromCubicMetres(Area.OfCircle(ram.Diameter).SquareMetres * ram.Stroke.Metres);
        var capacity = model.Fluid!.Capacity!.Value;
        Assert.True(stroke + ram.DeadVolume < capacity);
        Assert.True(model.Behaviour.Oil?.Usable is not { } usable || (stroke < usable && usable < capacity));
        Assert.All(model.States.Where(s => s.Loses is not null), s => Assert.Equal(s.Loses, s.Undo?.Volume));
        Assert.True(model.States.Aggregate(Volume.FromSi(0), (sum, s) => sum + (s.Loses ?? Volume.FromSi(0))) <= capacity);
    }

    [Fact]
    public void The_stroke_of_the_Corrie_85_takes_the_time_of_the_recorded_tool()
    {
        var b = DemoModels.Of("corrie-85").Behaviour!;
        var idleAmperes = b.Drive!.FrictionTorque!.Value.NewtonMetres / b.Drive.TorqueConstant;
        var pumpTurnsPerSecond = (b.Drive.SupplyVolts - idleAmperes * b.Drive.ResistanceOhms) / b.Drive.TorqueConstant / b.Drive.GearRatio / (2 * Math.PI);
        var flow = pumpTurnsPerSecond * b.Pump!.Filling!.Value * b.Pump.DisplacementPerTurn;
        var seconds = Area.OfCircle(b.Ram!.Diameter).SquareMetres * b.Ram.Stroke.Metres / flow.CubicMetres;
        Assert.Equal(Reference().GetProperty("secondsToClosedDies").GetDouble(), seconds, tolerance: 0.2);
    }

    // Published/reference-tool-85.json: service data of the recorded strokes (invented data).
    [Fact]
    public void The_Corrie_85_is_the_tool_of_the_recorded_strokes()
    {
        var model = DemoModels.Of("corrie-85");
        var b = model.Behaviour!;
        var data = Reference().GetProperty("parameters");
        var pairs = new (string Name, double Value)[]
        {
            ("vbat", b.Drive!.SupplyVolts), ("r", b.Drive.ResistanceOhms), ("kt", b.Drive.TorqueConstant), ("tfric", b.Drive.FrictionTorque!.Value.NewtonMetres),
            ("j", b.Drive.InertiaKilogramSquareMetres!.Value), ("gear", b.Drive.GearRatio), ("egear", b.Drive.GearEfficiency), ("imax", b.Drive.CurrentLimitAmperes!.Value),
            ("d_cc", b.Pump!.DisplacementPerTurn.Millilitres), ("vch_cc", b.Pump.ChamberVolume!.Value.Millilitres), ("fill", b.Pump.Filling!.Value),
            ("oil_cc", b.Oil!.Usable!.Value.Millilitres), ("k0", b.Oil.BulkModulus.Pascals), ("kslope", b.Oil.BulkModulusSlope), ("rho", b.Oil.DensityKilogramsPerCubicMetre), ("air", b.Oil.Air!.Value),
            ("vdead_cc", b.Ram!.DeadVolume.Millilitres), ("dram_mm", b.Ram.Diameter.Millimetres), ("xclose_mm", b.Ram.Stroke.Millimetres), ("mass", b.Ram.MovingMass!.Value.Kilograms),
            ("b", b.Ram.ViscousNewtonSecondsPerMetre!.Value), ("fc", b.Ram.DryFriction!.Value.Newtons), ("cf", b.Ram.SealFrictionShare!.Value),
            ("spr0", b.Ram.SpringPreload!.Value.Newtons), ("sprk", b.Ram.SpringRate!.Value.NewtonsPerMetre), ("kframe", b.FrameStiffness!.Value.NewtonsPerMetre),
            ("lag_ms", b.SensorResponse!.Value.TotalMilliseconds), ("pset_bar", model.Limits.Nominal.Bar), ("resetratio", b.Relief!.ClosingRatio!.Value),
        };
        Assert.All(pairs, p => Assert.Equal(1, p.Value / data.GetProperty(p.Name).GetDouble(), tolerance: 1e-9));
        Assert.Equal("check", data.GetProperty("inlet").GetString());
        Assert.Equal(InletKind.Check, b.Pump.Inlet);
    }

    private static Area NetArea(ReliefData relief) =>
        Area.OfCircle(relief.ContactDiameter) - Area.OfCircle(relief.StemDiameter ?? Length.FromSi(0));

    private static double InstalledMetres(ServiceModel model, string part) => (model.Part(part).Place!.To - model.Part(part).Place!.From).Metres;

    private static JsonElement Reference()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Folder("tests"), "ServiceModels.Tests", "Published", "reference-tool-85.json")));
        return file.RootElement.Clone();
    }
}
