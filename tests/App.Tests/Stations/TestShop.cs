using Ramwright.App.Demo;
using Ramwright.App.Papers;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Stations;

/// <summary>The made-up house in a folder of its own, with a job carried to the station under test.</summary>
internal sealed class TestShop : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private TestShop()
    {
        Bench = new Bench(new Ledger(Path.Combine(_folder.Path, "ramwright.db"), TimeProvider.System), new ShopModels(Path.Combine(AppContext.BaseDirectory, "models")), TimeProvider.System);
        Archive = new PaperArchive(PaperFolder, Bench.Ledger);
    }

    public Bench Bench { get; }

    public PaperArchive Archive { get; }

    public string PaperFolder => Path.Combine(_folder.Path, "papers");

    public JobId Job { get; private set; }

    /// <summary>A Corrie 85 that was just taken in, and stands at Arrive.</summary>
    public static async Task<TestShop> OpenAsync()
    {
        var shop = new TestShop();
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. SaltmarshHouse.Registers(shop.Bench.Today)]);
        var opened = await new ArriveStation(shop.Bench).TakeInAsync(Sign(), TakenIn);
        shop.Job = Assert.IsType<ActAnswer.Done>(opened).Job!.Value;
        return shop;
    }

    /// <summary>The same, moved to a station as a job moves on: by an entry.</summary>
    public static async Task<TestShop> AtAsync(Station station)
    {
        var shop = await OpenAsync();
        await shop.WriteAsync(new StationReached(station, "for the test"));
        return shop;
    }

    public static Intake TakenIn => new() { Tool = ToolSerial.Parse("2231"), ModelId = "corrie-85", Customer = "Eelmarsh Lines", Condition = "complete, with pack" };

    public static Signature Sign() => new(SubmitToken.New(), SaltmarshHouse.Lead);

    public async Task WriteAsync(params JobEvent[] events) =>
        Assert.IsType<Appended.Written>(await Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, Job, null, events));

    public async Task<JobState> StateAsync() => (await Bench.Ledger.ReadAsync(Job))!;

    /// <summary>The one reason of a refusal.</summary>
    public static string Why(ActAnswer answer) => Assert.Single(Assert.IsType<ActAnswer.Refused>(answer).Mistakes).What;

    public void Dispose()
    {
        Bench.Ledger.Dispose();
        _folder.Dispose();
    }
}
