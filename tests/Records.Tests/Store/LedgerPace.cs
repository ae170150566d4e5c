using System.Diagnostics;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

/// <summary>Prints how fast writing and verifying are. The bounds are wide: they catch a slip of order, not a busy machine.</summary>
public sealed class LedgerPace(ITestOutputHelper output)
{
    [Fact]
    public async Task Writing_and_verifying_keep_their_pace()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        var writing = Stopwatch.StartNew();
        for (var i = 0; i < 100; i++)
            await bench.NoteAsync(job, $"note {i}");
        writing.Stop();
        for (var block = 0; block < 25; block++)
        {
            var other = await bench.OpenAsync();
            await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, other, null, [.. Enumerable.Range(0, 200).Select(i => new NoteWritten(Station.Arrive, $"note {i}"))]);
        }

        var verifying = Stopwatch.StartNew();
        var head = Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, TestContext.Current.CancellationToken)).Head;
        verifying.Stop();
        output.WriteLine($"one write {writing.Elapsed.TotalMilliseconds / 100:0.0} ms; verifying {head.Number} entries {verifying.Elapsed.TotalMilliseconds:0} ms");
        Assert.True(writing.Elapsed < TimeSpan.FromSeconds(30));
        Assert.True(verifying.Elapsed < TimeSpan.FromSeconds(5));
    }
}
