using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Tests.Stations;
using Ramwright.App.Web;

namespace Ramwright.App.Tests.Web;

/// <summary>The check page in a real browser without a network: it must answer as the verb does.</summary>
public sealed class CheckPageTests(ReleasedHouse house) : IClassFixture<ReleasedHouse>, IAsyncLifetime
{
    private readonly List<string> _errors = [];
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Headless = true, Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"] });
    }

    public async ValueTask DisposeAsync()
    {
        await _browser!.CloseAsync();
        _playwright!.Dispose();
    }

    [Fact]
    public async Task Tells_genuine_from_altered_off_line()
    {
        using var copy = house.Copy();
        var page = await OpenAsync(copy);
        Assert.Equal("genuine", await DropAsync(page, copy.Report));
        Assert.Contains($"{copy.Job}-P1", await page.InnerTextAsync("#answer"), StringComparison.Ordinal);
        Assert.Equal("genuine", await DropAsync(page, copy.Result));
        Assert.Equal("genuine", await PasteAsync(page, copy.Code.ToLowerInvariant().Insert(100, " \n")));
        Assert.Equal("altered", await PasteAsync(page, copy.Code[..^40] + (copy.Code[^40] == 'A' ? 'B' : 'A') + copy.Code[^39..]));
        Assert.Equal("no paper", await PasteAsync(page, "RW1:KQZ2"));
        Assert.Equal("altered", await DropAsync(page, copy.Altered()));
        File.WriteAllText(copy.In("altered.json"), File.ReadAllText(copy.Result).Replace("\"conforms\"", "\"undecided\"", StringComparison.Ordinal));
        Assert.Equal("altered", await DropAsync(page, copy.In("altered.json")));
        Assert.Empty(_errors);
    }

    [Fact]
    public async Task Finds_a_changed_byte_anywhere_in_the_signature()
    {
        using var copy = house.Copy();
        var page = await OpenAsync(copy);
        var whole = File.ReadAllBytes(copy.Report);
        var from = System.Text.Encoding.Latin1.GetString(whole).IndexOf("/Type/Sig/", StringComparison.Ordinal);
        for (var at = from; at < whole.Length; at += 151)
        {
            var bytes = whole.AsSpan().ToArray();
            bytes[at] ^= 1;
            File.WriteAllBytes(copy.In("changed.pdf"), bytes);
            Assert.NotEqual("genuine", await DropAsync(page, copy.In("changed.pdf")));
        }
    }

    [Fact]
    public async Task Says_superseded_revoked_and_unknown()
    {
        using var copy = house.Copy();
        await copy.CorrectAsync("the serial number was misread");
        Assert.Equal("superseded", await DropAsync(await OpenAsync(copy), copy.Report));
        var key = (string)(await Run.Of("keys", "list", "--data", copy.Data, "--json")).Json["signing"]!;
        await Run.Of("keys", "revoke", key, "--why", "the tablet was stolen", "--data", copy.Data);
        Assert.Equal("revoked", await DropAsync(await OpenAsync(copy), copy.Report));
        Directory.Delete(copy.In("house", "paper-keys"), recursive: true);
        new Paper.Signing.KeyRing(copy.In("house", "paper-keys"), TimeProvider.System).Open("another <house> & more").Dispose();
        var other = await OpenAsync(copy);
        foreach (var paper in new[] { copy.Report, copy.Result })
            Assert.Equal("unknown", await DropAsync(other, paper));
        Assert.Empty(_errors);
    }

    [Fact]
    public async Task A_page_whose_list_was_changed_says_so_and_checks_nothing()
    {
        using var copy = house.Copy();
        var path = await PageOfAsync(copy);
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"house\": \"Saltmarsh", "\"house\": \"Saltmash", StringComparison.Ordinal));
        var page = await _browser!.NewPageAsync();
        await page.GotoAsync("file://" + path);
        await page.WaitForFunctionAsync("() => document.getElementById('asof').textContent.includes('was changed')");
        Assert.Equal(0, await page.Locator("form").CountAsync());
    }

    [Fact]
    public async Task The_bench_serves_it_under_its_own_strict_policy()
    {
        using var copy = house.Copy();
        await using var app = WebHost.Build(new ServeOptions { DataFolder = copy.Data, Port = 0 });
        await app.StartAsync(TestContext.Current.CancellationToken);
        var page = await _browser!.NewPageAsync();
        page.Console += (_, message) => { if (message.Type == "error") _errors.Add(message.Text); };
        var answer = await page.GotoAsync(app.Urls.First() + "/verify");
        Assert.Contains("script-src 'self'", answer!.Headers["content-security-policy"], StringComparison.Ordinal);
        Assert.Equal("genuine", await DropAsync(page, copy.Report));
        Assert.Empty((await page.RunAxe()).Violations);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.Empty(_errors);
    }

    private static async Task<string> PageOfAsync(HouseCopy copy)
    {
        var path = copy.In($"check-{Guid.NewGuid():N}.html");
        Assert.Equal(0, (await Run.Of("keys", "page", path, "--data", copy.Data)).Exit);
        return path;
    }

    private async Task<IPage> OpenAsync(HouseCopy copy)
    {
        var path = await PageOfAsync(copy);
        var context = await _browser!.NewContextAsync(new() { Offline = true });
        var page = await context.NewPageAsync();
        page.Console += (_, message) => { if (message.Type == "error") _errors.Add(message.Text); };
        await page.GotoAsync("file://" + path);
        return page;
    }

    private static async Task<string> DropAsync(IPage page, string file)
    {
        await page.EvaluateAsync("() => document.getElementById('answer').replaceChildren()");
        await page.SetInputFilesAsync("#file", Array.Empty<string>());
        await page.SetInputFilesAsync("#file", file);
        return await page.InnerTextAsync("#answer h2");
    }

    private static async Task<string> PasteAsync(IPage page, string code)
    {
        await page.EvaluateAsync("() => document.getElementById('answer').replaceChildren()");
        await page.FillAsync("#code", code);
        await page.ClickAsync("button");
        return await page.InnerTextAsync("#answer h2");
    }
}
