using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.Store;
using Ramwright.Records.Tests.Store;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>A whole made-up house through the ledger, with the bundled models, real plans, quotes and verdicts; told once for all tests.</summary>
public sealed class SaltmarshHouseTests(SaltmarshHouseTests.Told told) : IClassFixture<SaltmarshHouseTests.Told>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Ledger Ledger => told.Bench.Ledger;

    [Fact]
    public async Task The_rack_holds_a_tool_at_every_station_and_two_jobs_have_ended()
    {
        var rack = await Ledger.JobsInHouseAsync(Stop);
        Assert.Equal(Enum.GetValues<Station>().Except([Station.Release]), rack.Select(p => p.Station).Distinct().Order());
        var ended = await Ledger.EndedJobsAsync(10, Stop);
        Assert.Equal([JobEnd.Released, JobEnd.ReturnedUnrepaired], ended.Select(p => p.End!.Value).Order());
        Assert.Equal(Conformity.Conforms, ended.Single(p => p.End == JobEnd.Released).Verdict);
        Assert.IsType<Verification.Genuine>(await Ledger.VerifyAsync(null, Stop));
    }

    [Fact]
    public async Task The_released_job_went_the_whole_way_and_the_tool_is_together_again()
    {
        var released = (await Ledger.EndedJobsAsync(10, Stop)).Single(p => p.End == JobEnd.Released);
        var job = (await Ledger.ReadAsync(released.Job, Stop))!;
        Assert.Equal(Enum.GetValues<Station>(), job.Route.Select(r => r.What.Station));
        Assert.Null(job.Strip!.Next);
        Assert.Null(job.Rebuild!.Next);
        Assert.Empty(job.RenewalsOwed);
        Assert.Empty(job.Done);
        Assert.Equal(12, job.StandingProof!.Peaks.Length);
        Assert.Contains(job.Quote!.Made.What.Quote.Firm, line => line.Price.Amount > 0);
    }

    [Fact]
    public async Task Telling_it_again_changes_nothing()
    {
        var head = await Ledger.HeadAsync(Stop);
        Assert.True(await SaltmarshHouse.FillAsync(told.Bench.Path, told.Bench.Clock, Told.Models()));
        Assert.Equal(head, await Ledger.HeadAsync(Stop));
    }

    [Fact]
    public async Task The_rack_made_anew_from_the_entries_is_the_rack_written_with_them()
    {
        var before = await Ledger.JobsInHouseAsync(Stop);
        await Ledger.RebuildTablesAsync(Stop);
        Assert.Equal(before, await Ledger.JobsInHouseAsync(Stop));
    }

    [Fact]
    public async Task Time_only_goes_on_along_the_numbers()
    {
        var entries = new List<Entry<JobEvent>>();
        foreach (var place in await Ledger.JobsInHouseAsync(Stop))
            entries.AddRange((await Ledger.ReadAsync(place.Job, Stop))!.History);
        var inOrder = entries.OrderBy(e => e.Number).Select(e => e.At).ToArray();
        Assert.Equal(inOrder.Order(), inOrder);
        Assert.True(inOrder[^1] <= told.Bench.Clock.GetUtcNow());
    }

    [Fact]
    public async Task A_house_that_somebody_else_began_is_left_alone()
    {
        using var other = new LedgerBench();
        await other.OpenAsync();
        Assert.False(await SaltmarshHouse.FillAsync(other.Path, other.Clock, []));
        Assert.Equal(1, (await other.Ledger.HeadAsync(Stop)).Number.Value);
    }

    /// <summary>The house, filled once.</summary>
    public sealed class Told : IAsyncLifetime
    {
        internal LedgerBench Bench { get; } = new();

        public static IEnumerable<ServiceModel> Models()
        {
            var shelf = new ModelShelf(Path.Combine(AppContext.BaseDirectory, "models"));
            return shelf.Ids().Select(id => Assert.IsType<ModelReading.Read>(shelf.Read(id)).Model);
        }

        public async ValueTask InitializeAsync() => Assert.True(await SaltmarshHouse.FillAsync(Bench.Path, Bench.Clock, Models()));

        public ValueTask DisposeAsync()
        {
            Bench.Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
