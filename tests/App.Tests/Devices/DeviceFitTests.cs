using System.Globalization;
using Ramwright.App.Demo;
using Ramwright.App.Devices;
using Ramwright.App.Tests.Stations;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Tests.Devices;

public sealed class DeviceFitTests
{
    [Fact]
    public async Task A_port_gauge_is_off_by_calibration_drift_temperature_and_step_and_misses_the_peak_upward()
    {
        // By hand: 2.5/2 = 1.25 bar; drift 0.8 bar/year x 150 d = 0.3285 bar, over √3 0.1897; 0.05 bar/K x 10 K over √3 0.2887; a step of 0.5 bar, 0.25/√3 = 0.1443;
        // root sum of squares 1.3049 bar, twice that 2.610 bar (JCGM 100:2008, 5.1.2). Upward also the rise x (2 + 1) ms, whole.
        using var shop = await TestShop.OpenAsync();
        var rise = ToolRise.BarPerSecond(Corrie(shop));
        var budget = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "PG-1")).Budget;
        Assert.Equal(2.610, budget.Systematic.BelowLimit.Bar, 0.0005);
        Assert.Equal(2.610 + (0.003 * rise), budget.Systematic.AboveLimit.Bar, 0.0005);
        Assert.Equal(["calibration", "temperature", "drift, as stated", "resolution"], budget.Lines.Select(l => l.What));
        Assert.Empty(budget.Remarks);
        Assert.Null(budget.Correction);
    }

    [Fact]
    public async Task A_room_that_was_read_and_a_rise_that_was_recorded_take_the_place_of_what_is_usual()
    {
        using var shop = await TestShop.OpenAsync();
        var at = new Circumstances { Room = Temperature.FromCelsius(27), RiseBarPerSecond = 2_000 };
        var budget = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "PG-1", at)).Budget;
        Assert.Equal(9, budget.Lines.Single(l => l.What == "temperature").Given, 1e-9); // 7 K off, and 2 K for what the device differs from the room
        Assert.Equal(6, budget.Capture.Bar, 1e-9);
    }

    [Fact]
    public async Task A_force_cell_adds_what_is_open_of_ram_spring_and_friction_and_is_corrected_by_its_points()
    {
        using var shop = await TestShop.OpenAsync();
        var budget = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "FC-2")).Budget;
        Assert.Equal(["calibration", "calibration line", "drift, as between calibrations", "friction", "ram diameter", "resolution", "return spring", "temperature"], budget.Lines.Select(l => l.What).Order(StringComparer.Ordinal));
        // By hand: half of (150 + 849.1) N over 1213.0 mm² is 4.12 bar, a/sqrt(3) of it 2.378 bar.
        Assert.Equal(2.378, budget.Lines.Single(l => l.What == "friction").Standard.Bar, 0.001);
        // The certificate's points: 70 N more at 80 kN, 78 N at 110 kN; a straight line gives some 69 N at 82 kN, 0.57 bar.
        Assert.InRange(budget.Correction!.ChangeAt(Pressure.FromBar(700)).Bar, 0.5, 0.65);
        Assert.Equal(4, budget.Lines.Single(l => l.What == "calibration line").DegreesOfFreedom);
        Assert.Equal((2.0, null), (budget.Factor, budget.DegreesOfFreedom)); // the line weighs so little that its few degrees of freedom do not count
    }

    [Fact]
    public async Task One_calibration_says_nothing_of_drift_so_as_much_is_taken_as_it_may_be_off()
    {
        using var shop = await TestShop.OpenAsync();
        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, Gauge("NEW", 1000, 1), Calibrated("NEW", today.AddDays(-73)) with { Due = today.AddDays(200) });
        var budget = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "NEW")).Budget;
        Assert.Equal(2e5 * 73 / 365.25, budget.Lines.Single(l => l.What == "drift, assumed").Given, 1);
        Assert.Equal([Proving.Reference.BudgetRemark.DriftAssumed, Proving.Reference.BudgetRemark.TemperatureNotStated], budget.Remarks);
    }

    [Theory]
    [InlineData("PH-3", "was due for calibration on")]
    [InlineData("TW-1", "does not read the pressure of this tool")]
    [InlineData("SLOW", "is too slow: at RISE bar/s a true peak may lie MISSED bar above its reading; a time constant and sampling interval of DO ms together would do.")]
    [InlineData("POINTS", "was calibrated from 100 to 600 bar; the limits of this tool are 679 and 721 bar")]
    [InlineData("NEVER", "was never calibrated")]
    [InlineData("SHORT", "ends at 600 bar, below the tool's maximum of 735 bar")]
    [InlineData("OWN", "was not compared with a reference at this visit")]
    public async Task What_cannot_prove_says_why(string instrument, string why)
    {
        using var shop = await TestShop.OpenAsync();
        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead,
            Gauge("SLOW", 1000, 40), Calibrated("SLOW", today), Gauge("POINTS", 1000, 1),
            Calibrated("POINTS", today) with { Points = [.. new[] { 1e7, 3e7, 5e7, 6e7 }.Select(p => new CalibrationPoint(p, p + 1e4))] }, Gauge("NEVER", 1000, 1), Gauge("SHORT", 600, 1), Calibrated("SHORT", today),
            Gauge("OWN", 1000, 1) with { Kind = InstrumentKind.ToolMemory }, Calibrated("OWN", today));
        var rise = ToolRise.BarPerSecond(Corrie(shop));
        why = why.Replace("RISE", rise.ToString("#,##0", CultureInfo.InvariantCulture), StringComparison.Ordinal).Replace("MISSED", (0.04 * rise).ToString("0.#", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("DO", (10_500 / rise).ToString("0.#", CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Contains(why, Assert.IsType<DeviceFit.Unfit>(await FitAsync(shop, instrument)).What, StringComparison.Ordinal);
    }

    private static ServiceModels.Model.ServiceModel Corrie(TestShop shop) => shop.Bench.Models.Find("corrie-85")!.Model;

    private static async Task<DeviceFit> FitAsync(TestShop shop, string instrument, Circumstances? at = null) =>
        DeviceFit.Of((await shop.Bench.Ledger.HouseAsync()).Find(InstrumentId.Parse(instrument))!, Corrie(shop), shop.Bench.Today, at);

    private static InstrumentRegistered Gauge(string id, double rangeBar, double responseMilliseconds) => new(InstrumentId.Parse(id), "made-up gauge", InstrumentKind.PortGauge, MeasuredKind.Pressure)
    {
        Range = MeasuredValue.Of(Pressure.FromBar(rangeBar)),
        Response = TimeSpan.FromMilliseconds(responseMilliseconds),
    };

    private static InstrumentCalibrated Calibrated(string id, DateOnly on) =>
        new(InstrumentId.Parse(id), on, on.AddDays(365), "K-1", "made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2)));
}
