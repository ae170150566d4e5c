using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Tests.Stations;
using Ramwright.App.Web.Pages;

namespace Ramwright.App.Tests.Verbs;

/// <summary>verify paper and the keys verbs, on the report of the made-up house.</summary>
public sealed class PaperVerbsTests(ReleasedHouse house) : IClassFixture<ReleasedHouse>
{
    [Fact]
    public async Task File_result_and_code_are_genuine_with_the_exported_list_alone()
    {
        using var copy = house.Copy();
        Assert.Equal(0, (await Run.Of("keys", "export", copy.In("keys.json"), "--data", copy.Data)).Exit);
        Assert.DoesNotContain("PRIVATE", File.ReadAllText(copy.In("keys.json")), StringComparison.Ordinal);
        foreach (var paper in new[] { copy.Report, copy.Result, copy.Code })
        {
            var run = await Run.Of("verify", "paper", paper, "--keys", copy.In("keys.json"), "--data", copy.In("nowhere"), "--json");
            Assert.Equal(0, run.Exit);
            Assert.Equal(("genuine", $"{copy.Job}-P1", "conforms", "M. Orme"), ((string?)run.Json["paper"], (string?)run.Json["report"]!["number"], (string?)run.Json["report"]!["verdict"], (string?)run.Json["report"]!["signatory"]));
        }

        var own = await Run.Of("verify", "paper", copy.Report, "--data", copy.Data);
        Assert.Equal(0, own.Exit);
        Assert.StartsWith("genuine, as of the list of Saltmarsh Tool Service", own.Data, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_byte_is_altered_and_another_house_is_unknown()
    {
        using var copy = house.Copy();
        Assert.Equal((1, "altered"), await WordOf(copy, copy.Altered()));
        using var other = house.Copy();
        Directory.Delete(other.In("house", "paper-keys"), recursive: true);
        Assert.Equal(3, (await Run.Of("verify", "paper", other.Report, "--data", other.Data)).Exit); // no list at all
        new Paper.Signing.KeyRing(other.In("house", "paper-keys"), TimeProvider.System).Open("another house").Dispose();
        Assert.Equal((3, "unknown"), await WordOf(other, other.Report));
    }

    [Fact]
    public async Task A_rotated_key_still_proves_and_a_revoked_one_does_not()
    {
        using var copy = house.Copy();
        var key = (string)(await Run.Of("keys", "list", "--data", copy.Data, "--json")).Json["signing"]!;
        var rotated = await Run.Of("keys", "rotate", "--data", copy.Data, "--json");
        Assert.NotEqual(key, (string?)rotated.Json["signing"]);
        Assert.Equal((0, "genuine"), await WordOf(copy, copy.Report));

        Assert.Equal(1, (await Run.Of("keys", "revoke", "0123456789abcdef", "--why", "none", "--data", copy.Data)).Exit);
        Assert.Equal(0, (await Run.Of("keys", "revoke", key, "--why", "the tablet was stolen", "--data", copy.Data)).Exit);
        foreach (var paper in new[] { copy.Report, copy.Result, copy.Code })
            Assert.Equal((1, "revoked"), await WordOf(copy, paper));
        Assert.Contains("revoked", (await Run.Of("keys", "list", "--data", copy.Data)).Data, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_corrected_report_takes_the_place_of_the_first_and_both_stay()
    {
        using var copy = house.Copy();
        Assert.Contains("Nothing was said", TestShop.Why(await copy.CorrectAsync(" ")), StringComparison.Ordinal);
        Assert.IsType<ActAnswer.Done>(await copy.CorrectAsync("the serial number was misread"));
        var first = await Run.Of("verify", "paper", copy.Report, "--data", copy.Data, "--json");
        Assert.Equal((1, "superseded", $"{copy.Job}-P2"), (first.Exit, (string?)first.Json["paper"], (string?)first.Json["by"]));
        var second = await Run.Of("verify", "paper", copy.Report.Replace("-P1", "-P2", StringComparison.Ordinal), "--data", copy.Data, "--json");
        Assert.Equal((0, $"{copy.Job}-P1"), (second.Exit, (string?)second.Json["report"]!["replaces"]));
        Assert.IsType<ActAnswer.Done>(await copy.CorrectAsync("once more"));
        Assert.Equal((1, "superseded"), await WordOf(copy, copy.Report.Replace("-P1", "-P2", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Keys_come_back_from_a_backup()
    {
        using var copy = house.Copy();
        Assert.Equal(0, (await Run.Of("keys", "backup", copy.In("keys-backup"), "--data", copy.Data)).Exit);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(copy.In("keys-backup")));
        Assert.Equal((70, "paper-keys-exist"), CodeOf(await Run.Of("keys", "restore", copy.In("keys-backup"), "--data", copy.Data, "--json")));
        Directory.Delete(copy.In("house", "paper-keys"), recursive: true);
        Assert.Equal(0, (await Run.Of("keys", "restore", copy.In("keys-backup"), "--data", copy.Data)).Exit);
        Assert.Equal((0, "genuine"), await WordOf(copy, copy.Report));
    }

    [Theory]
    [InlineData("verify paper nothing.pdf", 2, "no-file")]
    [InlineData("verify paper RW1:KQZ2", 2, "no-paper")]
    [InlineData("verify paper RW1:KQZ2 --keys list.json", 2, "paper-list-damaged")]
    [InlineData("keys revoke 12 --why none", 2, "usage")]
    [InlineData("keys export list.json", 2, "usage")]
    public async Task What_cannot_be_used_is_said_by_code(string line, int exit, string code)
    {
        using var copy = house.Copy();
        File.WriteAllText(copy.In("list.json"), File.ReadAllText(copy.In("house", "paper-keys", "list.json")).Replace("Saltmarsh", "Saltmash", StringComparison.Ordinal));
        var words = line.Split(' ').Select(w => w.EndsWith(".pdf", StringComparison.Ordinal) || w.EndsWith(".json", StringComparison.Ordinal) ? copy.In(w) : w);
        Assert.Equal((exit, code), CodeOf(await Run.Of([.. words, "--data", copy.Data, "--json"])));
    }

    private static async Task<(int Exit, string? Word)> WordOf(HouseCopy copy, string paper)
    {
        var run = await Run.Of("verify", "paper", paper, "--data", copy.Data, "--json");
        return (run.Exit, (string?)run.Json["paper"]);
    }

    private static (int Exit, string? Code) CodeOf(Run run) => (run.Exit, (string?)(run.Json["mistakes"]?[0]?["code"] ?? run.Json["fault"]?["code"]));
}
