using Microsoft.Data.Sqlite;
using Ramwright.App.Demo;
using Ramwright.App.Tests.CommandLine;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Verbs;

/// <summary>backup, restore and verify ledger, on the registers of the made-up house.</summary>
public sealed class LedgerVerbsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_backup_restored_elsewhere_is_genuine_and_has_the_same_head()
    {
        var house = await HouseAsync();
        var backup = In("monday.ledger");
        var written = await Run.Of("backup", backup, "--data", house, "--json");
        Assert.Equal(0, written.Exit);
        Assert.Equal("ramwright/backup/1", (string?)written.Json["schema"]);
        Assert.Equal(0, (await Run.Of("verify", "ledger", "--ledger", backup)).Exit);

        Assert.Equal(0, (await Run.Of("restore", backup, "--data", In("other"))).Exit);
        var verified = await Run.Of("verify", "ledger", "--data", In("other"), "--head", (string)written.Json["head"]!, "--json");
        Assert.Equal(0, verified.Exit);
        Assert.Equal((string?)written.Json["head"], (string?)verified.Json["head"]);
        Assert.Equal((int)written.Json["lastEntry"]!, (int)verified.Json["askedEntry"]!);
    }

    [Fact]
    public async Task Nothing_is_overwritten_unless_it_is_set_aside()
    {
        var house = await HouseAsync();
        var backup = In("monday.ledger");
        await Run.Of("backup", backup, "--data", house);
        Assert.Equal((2, "backup-exists"), CodeOf(await Run.Of("backup", backup, "--data", house, "--json")));
        Assert.Equal((2, "ledger-exists"), CodeOf(await Run.Of("restore", backup, "--data", house, "--json")));

        using (var ledger = new Ledger(Path.Combine(house, "ramwright.db"), TimeProvider.System))
            await ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, SaltmarshHouse.Registers(new DateOnly(2026, 3, 2))[0]);
        var replaced = await Run.Of("restore", backup, "--data", house, "--replace", "--json");
        Assert.Equal(0, replaced.Exit);
        Assert.All(replaced.Json["setAside"]!.AsArray(), aside => Assert.True(File.Exists((string)aside!)));
        Assert.Equal((int)replaced.Json["lastEntry"]! + 1, (int)replaced.Json["lostAfter"]!["lastEntry"]!);
    }

    [Theory]
    [InlineData("verify ledger --data nowhere", 3, "no-ledger")]
    [InlineData("backup new.ledger --data nowhere", 2, "no-ledger")]
    [InlineData("backup no/such/folder/new.ledger --data house", 2, "usage")]
    [InlineData("restore nothing.ledger --data nowhere", 2, "no-file")]
    [InlineData("restore garbage.ledger --data nowhere", 70, "ledger-damaged")]
    [InlineData("verify ledger --ledger garbage.ledger", 70, "ledger-damaged")]
    [InlineData("serve --port 0 --data garbage-house", 70, "ledger-damaged")]
    [InlineData("demo --out garbage.ledger", 2, "usage")]
    public async Task What_cannot_be_used_is_said_by_code(string line, int exit, string code)
    {
        await HouseAsync();
        _folder.Write("garbage.ledger", new string('g', 5000));
        Directory.CreateDirectory(In("garbage-house"));
        _folder.Write("garbage-house/ramwright.db", new string('g', 5000));
        var words = line.Split(' ').Select(w => w.EndsWith(".ledger", StringComparison.Ordinal) || w is "nowhere" or "house" or "garbage-house" ? In(w) : w);
        Assert.Equal((exit, code), CodeOf(await Run.Of([.. words, "--json"])));
        Assert.False(File.Exists(In("nowhere/ramwright.db")));
    }

    [Fact]
    public async Task An_entry_changed_behind_the_ledgers_back_is_a_no()
    {
        var house = await HouseAsync();
        await using (var connection = new SqliteConnection($"Data Source={Path.Combine(house, "ramwright.db")};Pooling=False"))
        {
            await connection.OpenAsync(TestContext.Current.CancellationToken);
            await using var change = connection.CreateCommand();
            change.CommandText = """DROP TRIGGER "Entries_no_update"; UPDATE "Entries" SET "Body" = replace("Body", 'J. Teal', 'K. Teal') WHERE "Body" LIKE '%J. Teal%'""";
            Assert.True(await change.ExecuteNonQueryAsync(TestContext.Current.CancellationToken) > 0);
        }

        var run = await Run.Of("verify", "ledger", "--data", house, "--json");
        Assert.Equal(1, run.Exit);
        Assert.Equal("altered", (string?)run.Json["ledger"]);
    }

    private async Task<string> HouseAsync()
    {
        var house = Directory.CreateDirectory(In("house")).FullName;
        using var ledger = new Ledger(Path.Combine(house, "ramwright.db"), TimeProvider.System);
        await ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. SaltmarshHouse.Registers(new DateOnly(2026, 3, 2))]);
        return house;
    }

    private string In(string name) => Path.Combine(_folder.Path, name);

    private static (int Exit, string? Code) CodeOf(Run run) => (run.Exit, (string?)(run.Json["mistakes"]?[0]?["code"] ?? run.Json["fault"]?["code"]));
}
