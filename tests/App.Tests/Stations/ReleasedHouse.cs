using System.Text.Json.Nodes;
using Ramwright.App.Demo;
using Ramwright.App.Papers;
using Ramwright.App.Stations.Release;
using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Stations;

/// <summary>The made-up house after one job: a released tool with its signed report. Made once; each test works on a copy.</summary>
public sealed class ReleasedHouse : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    public JobId Job { get; private set; }

    public async ValueTask InitializeAsync()
    {
        using var walk = new DemoWalk(_folder.Path, TimeProvider.System, _ => { });
        Job = (await walk.RunAsync(TestContext.Current.CancellationToken)).Id;
        Assert.True(walk.Released);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    internal HouseCopy Copy()
    {
        var copy = new HouseCopy(new TemporaryFolder(), Job);
        foreach (var file in Directory.GetFiles(_folder.Path, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(copy.Data, Path.GetRelativePath(_folder.Path, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return copy;
    }
}

/// <summary>A copy of the house, to be changed by one test.</summary>
internal sealed record HouseCopy(TemporaryFolder Folder, JobId Job) : IDisposable
{
    public string Data => Path.Combine(Folder.Path, "house");

    public string Report => In("house", "papers", $"{Job}-P1.pdf");

    public string Result => Path.ChangeExtension(Report, ".json");

    public string Code => (string)JsonNode.Parse(File.ReadAllText(Result))!["code"]!;

    public string In(params string[] names) => Path.Combine([Folder.Path, .. names]);

    /// <summary>A copy of the report with one byte changed in its middle.</summary>
    public string Altered()
    {
        var bytes = File.ReadAllBytes(Report);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(In("altered.pdf"), bytes);
        return In("altered.pdf");
    }

    /// <summary>Issues the report once more, corrected.</summary>
    public async Task<ActAnswer> CorrectAsync(string? why)
    {
        var bench = new Bench(new Ledger(In("house", "ramwright.db"), TimeProvider.System), new ShopModels(Path.Combine(AppContext.BaseDirectory, "models")), TimeProvider.System);
        try
        {
            return await new ReleaseStation(bench, new PaperArchive(In("house", "papers"), bench.Ledger)).CorrectReportAsync(TestShop.Sign(), Job, why);
        }
        finally
        {
            bench.Ledger.Dispose();
        }
    }

    public void Dispose() => Folder.Dispose();
}
