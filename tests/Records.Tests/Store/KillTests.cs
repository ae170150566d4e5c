using System.Diagnostics;
using System.Globalization;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

/// <summary>A process writes as fast as it can and is killed with SIGKILL: what it had acknowledged is there.</summary>
public sealed class KillTests
{
    private const string LedgerVariable = "RAMWRIGHT_KILL_TEST_LEDGER";

    [Fact]
    public async Task An_acknowledged_write_survives_kill_9()
    {
        using var bench = new LedgerBench();
        var acknowledged = bench.Path + ".acknowledged";
        await File.WriteAllTextAsync(acknowledged, "", TestContext.Current.CancellationToken);
        for (var round = 0; round < 2; round++)
            await WriteAndKillAsync(bench, acknowledged, more: 25);

        Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, TestContext.Current.CancellationToken));
        var job = (await bench.Ledger.ReadAsync(JobId.Parse("J-0001"), TestContext.Current.CancellationToken))!;
        var notes = job.Notes.ToDictionary(n => n.Number.ToString(), n => n.What.Text, StringComparer.Ordinal);
        var lines = await Lines(acknowledged);
        Assert.True(lines.Length >= 50);
        Assert.All(lines, line => Assert.Equal(line.Split(' ')[1], notes[line.Split(' ')[0]]));
    }

    /// <summary>The child: only started by the test above, in a process of its own.</summary>
    [Fact(Explicit = true)]
    public async Task Writes_until_it_is_killed()
    {
        if (Environment.GetEnvironmentVariable(LedgerVariable) is not { } path)
            return;
        using var ledger = new Ledger(path, TimeProvider.System);
        var job = JobId.Parse("J-0001");
        if (await ledger.ReadAsync(job, TestContext.Current.CancellationToken) is null)
            await ledger.OpenJobAsync(SubmitToken.New(), LedgerBench.Ada, LedgerBench.Opening());
        for (var i = 0; i < 100_000; i++)
        {
            var text = Guid.NewGuid().ToString("N");
            var written = (Appended.Written)await ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, job, null, new NoteWritten(Station.Arrive, text));
            await File.AppendAllTextAsync(path + ".acknowledged", string.Create(CultureInfo.InvariantCulture, $"{written.Numbers[0]} {text}\n"), TestContext.Current.CancellationToken);
        }
    }

    private static async Task WriteAndKillAsync(LedgerBench bench, string acknowledged, int more)
    {
        var enough = (await Lines(acknowledged)).Length + more;
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Ramwright.Records.Tests"))
        {
            ArgumentList = { "-method", $"{typeof(KillTests).FullName}.{nameof(Writes_until_it_is_killed)}", "-explicit", "only" },
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment[LedgerVariable] = bench.Path;
        using var child = Process.Start(start)!;
        var patience = Stopwatch.StartNew();
        while ((await Lines(acknowledged)).Length < enough)
        {
            Assert.False(child.HasExited, "the writing process ended by itself");
            Assert.True(patience.Elapsed < TimeSpan.FromSeconds(60), "the writing process does not get anywhere");
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        child.Kill(); // SIGKILL
        await child.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Whole lines only: the last may be cut by the kill.</summary>
    private static async Task<string[]> Lines(string path)
    {
        var text = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        return text[..(text.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
