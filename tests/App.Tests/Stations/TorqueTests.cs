using System.Collections.Immutable;
using Ramwright.App.Demo;
using Ramwright.App.Stations.Rebuild;
using Ramwright.App.Stations.Release;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Tests.Stations;

/// <summary>A torque counts only by a wrench that may be relied on, on the day and afterwards.</summary>
public sealed class TorqueTests
{
    private static readonly InstrumentId Wrench = InstrumentId.Parse("TW-1");

    [Theory]
    [InlineData("PG-1", 85, "is no torque wrench")]
    [InlineData("OLD", 85, "is overdue for calibration: a torque signed with it is void")]
    [InlineData("GONE", 85, "is withdrawn from use")]
    [InlineData("SMALL", 85, "ends at 50 N·m: beyond its range its torque is void")]
    [InlineData("TW-1", 70, "lies outside")]
    public async Task Signs_nothing_and_says_why(string wrench, double newtonMetres, string why)
    {
        using var shop = await PlannedAsync();
        var answer = await new RebuildStation(shop.Bench).SignAsync(TestShop.Sign(), shop.Job, 0, Torque.FromNewtonMetres(newtonMetres), InstrumentId.Parse(wrench), [], null);
        Assert.Contains(why, TestShop.Why(answer), StringComparison.Ordinal);
        Assert.Empty((await shop.StateAsync()).Rebuild!.Signed);
    }

    [Fact]
    public async Task A_torque_signed_with_a_wrench_found_off_since_is_void_with_its_reason()
    {
        using var shop = await PlannedAsync();
        Assert.IsType<ActAnswer.Done>(await new RebuildStation(shop.Bench).SignAsync(TestShop.Sign(), shop.Job, 0, Torque.FromNewtonMetres(85), Wrench, [], null));
        Assert.Empty(Doubts.Of(await shop.StateAsync(), await shop.Bench.Ledger.HouseAsync(TestContext.Current.CancellationToken), TimeZoneInfo.Utc));
        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, Calibrated("TW-1", today.AddDays(1)) with { AsFoundWithin = false });
        var said = Assert.Single(Doubts.Of(await shop.StateAsync(), await shop.Bench.Ledger.HouseAsync(TestContext.Current.CancellationToken), TimeZoneInfo.Utc));
        Assert.Contains("TW-1 was found off", said, StringComparison.Ordinal);
        Assert.Contains("the torque of rebuild step 1 is void", said, StringComparison.Ordinal);
    }

    /// <summary>A job at Rebuild with one step: a nut at 85 N·m ± 5 %.</summary>
    private static async Task<TestShop> PlannedAsync()
    {
        var shop = await TestShop.AtAsync(Station.Rebuild);
        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead,
            Registered("OLD", 120), Calibrated("OLD", today.AddDays(-400)), Registered("SMALL", 50), Calibrated("SMALL", today), Registered("GONE", 120) with { InUse = false }, Calibrated("GONE", today));
        var steps = ImmutableArray.Create(new RebuildStep
        {
            Kind = RebuildKind.FitPart,
            Node = new NodeId("cap-nut"),
            Parts = [new NodeId("cap-nut")],
            Operation = "screw the cap nut on",
            Time = TimeSpan.FromMinutes(2),
            ChangeTime = TimeSpan.Zero,
            Torque = new TorqueSpec(Torque.FromNewtonMetres(85), 0.05),
        });
        await shop.WriteAsync(new RebuildPlanned([new NodeId("cap-nut")], new RebuildPlan { Steps = steps, Tools = [], LikelyTime = TimeSpan.FromMinutes(2), SafeTime = TimeSpan.FromMinutes(3), Labour = new(2, "EUR"), OilFilled = Volume.FromMillilitres(0) }));
        return shop;
    }

    private static InstrumentRegistered Registered(string id, double newtonMetres) => new(InstrumentId.Parse(id), "made-up wrench", InstrumentKind.TorqueWrench, MeasuredKind.Torque) { Range = MeasuredValue.Of(Torque.FromNewtonMetres(newtonMetres)) };

    private static InstrumentCalibrated Calibrated(string id, DateOnly on) => new(InstrumentId.Parse(id), on, on.AddDays(365), "K-1", "made-up laboratory", MeasuredValue.Of(Torque.FromNewtonMetres(1)));
}
