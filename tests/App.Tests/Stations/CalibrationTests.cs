using System.Globalization;
using Ramwright.App.Demo;
using Ramwright.App.House.Instruments;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Stations;

/// <summary>A new certificate of an instrument of the house, and what a failed one puts in doubt.</summary>
public sealed class CalibrationTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_new_certificate_leaves_range_response_and_connection_as_they_were()
    {
        using var shop = await TestShop.OpenAsync();
        var before = (await shop.Bench.Ledger.HouseAsync(Stop)).Find(SaltmarshHouse.ForceCell)!;
        await CertifyAsync(shop, asFound: "within");
        var after = (await shop.Bench.Ledger.HouseAsync(Stop)).Find(SaltmarshHouse.ForceCell)!;
        Assert.Equal(before.Facts, after.Facts);
        Assert.Equal(before.Calibrations.Count + 1, after.Calibrations.Count);
        Assert.Null(after.InDoubt);
    }

    [Fact]
    public async Task A_failed_one_names_every_job_that_relied_on_it_since_the_one_before_and_no_other()
    {
        using var shop = await TestShop.AtAsync(Station.Prove);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).OpenAsync(TestShop.Sign(), shop.Job, new SeriesWish(SaltmarshHouse.ForceCell, "dies closed on nothing", null, null)));
        await CertifyAsync(shop, asFound: "off");
        var (since, until) = (await shop.Bench.Ledger.HouseAsync(Stop)).Find(SaltmarshHouse.ForceCell)!.InDoubt!.Value;
        Assert.Equal(shop.Job, Assert.Single(await shop.Bench.Ledger.MeasuredWithAsync(SaltmarshHouse.ForceCell, since, until, 100, Stop)).Id);
        Assert.Empty(await shop.Bench.Ledger.MeasuredWithAsync(SaltmarshHouse.ForceCell, since, until.AddDays(-30), 100, Stop));
        Assert.Empty(await shop.Bench.Ledger.MeasuredWithAsync(InstrumentId.Parse("PG-1"), since, until, 100, Stop));
    }

    [Theory]
    [InlineData("1,000 bar", "another quantity")]
    [InlineData("-5", "not above zero")]
    public async Task A_range_that_cannot_be_is_said_beside_its_field(string range, string said)
    {
        using var shop = await TestShop.OpenAsync();
        var form = await FormAsync(shop, "within");
        form.Range = range;
        var mistakes = new FormMistakes();
        Assert.Null(form.Read(await shop.Bench.Ledger.HouseAsync(Stop), mistakes));
        Assert.Contains(said, mistakes.At("Range")!.What, StringComparison.Ordinal);
    }

    private static async Task<CalibrationForm> FormAsync(TestShop shop, string asFound)
    {
        var form = CalibrationForm.Of((await shop.Bench.Ledger.HouseAsync(Stop)).Find(SaltmarshHouse.ForceCell)!);
        var today = shop.Bench.Today;
        (form.On, form.Due, form.Certificate, form.Laboratory, form.Expanded, form.AsFound) =
            (today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), today.AddDays(365).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "K-2400", "Saltmarsh Harbour Calibration", "0.34", asFound);
        return form;
    }

    private static async Task CertifyAsync(TestShop shop, string asFound)
    {
        var events = (await FormAsync(shop, asFound)).Read(await shop.Bench.Ledger.HouseAsync(Stop), new FormMistakes())!;
        Assert.IsType<Appended.Written>(await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. events]));
    }
}
