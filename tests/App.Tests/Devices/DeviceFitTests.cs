using Ramwright.App.Demo;
using Ramwright.App.Devices;
using Ramwright.App.Tests.Stations;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Tests.Devices;

public sealed class DeviceFitTests
{
    [Fact]
    public async Task A_port_gauge_is_off_by_its_calibration_and_its_step_and_misses_the_peak_upward()
    {
        // By hand: 2.5 bar (k = 2) and a step of 0.5 bar, 2 x 0.5/sqrt(12) = 0.289 bar; root sum of squares 2.517 bar (JCGM 100:2008, 5.1.2, F.2.2.1).
        // Upward also 1000 bar/s x (2 + 1) ms = 3 bar, whole.
        using var shop = await TestShop.OpenAsync();
        var fit = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "PG-1"));
        Assert.Equal(2.517, fit.Systematic.BelowLimit.Bar, 0.0005);
        Assert.Equal(5.517, fit.Systematic.AboveLimit.Bar, 0.0005);
        Assert.Equal(3, fit.Capture.Bar, 1e-9);
        Assert.Equal(["calibration", "resolution"], fit.Lines.Select(l => l.What));
    }

    [Fact]
    public async Task A_force_cell_adds_what_is_open_of_ram_spring_and_friction()
    {
        using var shop = await TestShop.OpenAsync();
        var fit = Assert.IsType<DeviceFit.Fits>(await FitAsync(shop, "FC-2"));
        Assert.Equal(["calibration", "friction", "ram diameter", "resolution", "spring"], fit.Lines.Select(l => l.What).Order(StringComparer.Ordinal));
        // By hand: half of (150 + 849.1) N over 1213.0 mm² is 4.12 bar, a/sqrt(3) of it 2.378 bar.
        Assert.Equal(2.378, fit.Lines.Single(l => l.What == "friction").Standard.Bar, 0.001);
    }

    [Theory]
    [InlineData("PH-3", "was due for calibration on")]
    [InlineData("TW-1", "does not read the pressure of this tool")]
    [InlineData("SLOW", "is too slow: at 1,000 bar/s a true peak may lie 25 bar above its reading; a time constant and sampling interval of 10.5 ms together would do.")]
    [InlineData("NEVER", "was never calibrated")]
    [InlineData("SHORT", "ends at 600 bar, below the tool's maximum of 735 bar")]
    [InlineData("OWN", "was not compared with a reference at this visit")]
    public async Task What_cannot_prove_says_why(string instrument, string why)
    {
        using var shop = await TestShop.OpenAsync();
        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead,
            Gauge("SLOW", 1000, 25), Calibrated("SLOW", today), Gauge("NEVER", 1000, 1), Gauge("SHORT", 600, 1), Calibrated("SHORT", today),
            Gauge("OWN", 1000, 1) with { Kind = InstrumentKind.ToolMemory }, Calibrated("OWN", today));
        Assert.Contains(why, Assert.IsType<DeviceFit.Unfit>(await FitAsync(shop, instrument)).What, StringComparison.Ordinal);
    }

    private static async Task<DeviceFit> FitAsync(TestShop shop, string instrument) =>
        DeviceFit.Of((await shop.Bench.Ledger.HouseAsync()).Find(InstrumentId.Parse(instrument))!, shop.Bench.Models.Find("corrie-85")!.Model, shop.Bench.Today);

    private static InstrumentRegistered Gauge(string id, double rangeBar, double responseMilliseconds) => new(InstrumentId.Parse(id), "made-up gauge", InstrumentKind.PortGauge, MeasuredKind.Pressure)
    {
        Range = MeasuredValue.Of(Pressure.FromBar(rangeBar)),
        Response = TimeSpan.FromMilliseconds(responseMilliseconds),
    };

    private static InstrumentCalibrated Calibrated(string id, DateOnly on) =>
        new(InstrumentId.Parse(id), on, on.AddDays(365), "K-1", "made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2)));
}
