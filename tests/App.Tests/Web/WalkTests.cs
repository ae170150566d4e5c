using System.Diagnostics;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Builder;
using Microsoft.Playwright;
using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Web;

namespace Ramwright.App.Tests.Web;

/// <summary>A person at the tablet: one made-up tool from Arrive to Release through the real pages, in a real browser.</summary>
public sealed partial class WalkTests
{
    private const int MostActs = 110;

    private readonly HashSet<string> _looked = new(StringComparer.Ordinal);
    private readonly List<string> _violations = [];

    [Fact]
    public async Task One_job_walks_from_Arrive_to_Release_and_every_page_on_the_way_passes_axe()
    {
        using var folder = new TemporaryFolder();
        await using var app = await ServeAsync(folder);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await LaunchAsync(playwright);
        var context = await browser.NewContextAsync(new() { BaseURL = app.Urls.First(), ViewportSize = new() { Width = 1280, Height = 800 }, ReducedMotion = ReducedMotion.Reduce });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(30_000); // a busy machine draws slowly
        var errors = new List<string>();
        page.Console += (_, message) => { if (message.Type == "error") errors.Add(message.Text); };

        foreach (var house in new[] { "/", "/tools", "/models", "/models/corrie-85", "/instruments", "/house", "/tablet", "/help", "/safety", "/people" })
        {
            await page.GotoAsync(house);
            await LookAsync(page, house);
        }

        await page.ClickAsync("button[name=person]:has-text('M. Orme')");
        await page.GotoAsync("/arrive");
        await LookAsync(page, "/arrive");
        await page.FillAsync("#Serial", "4711");
        await page.SelectOptionAsync("#ModelId", "corrie-85");
        await page.FillAsync("#Customer", "Eelmarsh Lines");
        await page.FillAsync("#Condition", "complete, oil at the cap");
        await page.ClickAsync(".act");
        var job = JobInUrl().Match(page.Url).Groups["job"].Value;
        Assert.NotEmpty(job);

        var acts = 0;
        var trail = new List<string>();
        while (!page.Url.Contains("/release", StringComparison.Ordinal) || await page.Locator("h1").InnerTextAsync() != "Released")
        {
            trail.Add($"{page.Url} {await page.Locator("h1").InnerTextAsync()}");
            Assert.True(++acts < MostActs, $"{string.Join('\n', trail.Take(12))} stuck at {page.Url}: {await page.Locator("main").InnerTextAsync()}");
            await ActAsync(page, job);
        }

        Assert.Empty(errors);
        foreach (var past in new[] { $"/jobs/{job}", $"/jobs/{job}/plan", $"/jobs/{job}/strip", $"/jobs/{job}/set", $"/jobs/{job}/prove", $"/jobs/{job}/prove/reference", "/instruments/calibrate?id=FC-2", "/tools/4711", "/nowhere" })
        {
            await page.GotoAsync(past);
            await LookAsync(page, "afterwards " + past);
        }

        await page.GotoAsync("/arrive");
        await page.ClickAsync(".act");
        await LookAsync(page, "/arrive with nothing filled in");
        Assert.Empty(_violations);
        var pdf = await page.APIRequest.GetAsync($"/papers/{job}-P1.pdf");
        Assert.True(pdf.Ok, $"the proof report answers {pdf.Status}");
        var text = await TextOfAsync(folder.Write("report.pdf", ""), await pdf.BodyAsync());
        foreach (var said in new[] { "Proof report", "conforms", "not issued under accreditation", job, "4711", "Eelmarsh Lines", "M. Orme" })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ten_lines_of_a_model_take_a_tool_from_Arrive_through_Set_and_Prove_to_Release()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "models"));
        File.Copy(Path.Combine(Checkout.Root, "docs", "getting-started", "ten-lines.yaml"), Path.Combine(folder.Path, "models", "skerry-30.yaml"));
        await using var app = await ServeAsync(folder);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await LaunchAsync(playwright);
        var page = await (await browser.NewContextAsync(new() { BaseURL = app.Urls.First() })).NewPageAsync();
        await page.GotoAsync("/people");
        await page.ClickAsync("button[name=person]:has-text('M. Orme')");
        await page.GotoAsync("/arrive");
        await page.FillAsync("#Serial", "0001");
        await page.SelectOptionAsync("#ModelId", "skerry-30");
        await page.FillAsync("#Customer", "Wrackford Rail");
        await page.FillAsync("#Condition", "complete");
        await page.ClickAsync(".act");
        var job = JobInUrl().Match(page.Url).Groups["job"].Value;
        var stations = new List<string>();
        for (var acts = 0; acts < 40 && await page.Locator("h1").InnerTextAsync() != "Released"; acts++)
        {
            stations.Add(StationInUrl().Match(page.Url).Groups["station"].Value);
            if (await page.Locator("select[name=device]").CountAsync() > 0)
                await page.SelectOptionAsync("select[name=device]", "PG-1");
            await ActAsync(page, job, looks: false);
        }

        Assert.Equal(["arrive", "set", "prove", "release"], stations.Distinct());
        Assert.True((await page.APIRequest.GetAsync($"/papers/{job}-P1.pdf")).Ok, "the proof report is there");
    }

    private static async Task<WebApplication> ServeAsync(TemporaryFolder folder)
    {
        var app = WebHost.Build(new ServeOptions { DataFolder = folder.Path, Port = 0, Demo = true, DevicePace = double.PositiveInfinity });
        await app.StartAsync(TestContext.Current.CancellationToken);
        return app;
    }

    private static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new()
    {
        ExecutablePath = "/usr/bin/chromium",
        Headless = true,
        Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    });

    private async Task ActAsync(IPage page, string job, bool looks = true)
    {
        var station = StationInUrl().Match(page.Url).Groups["station"].Value;
        if (looks)
            await LookAsync(page, $"{station}: {(await page.Locator("form .act, a.act").CountAsync() == 0 ? "none" : await page.Locator(".act").First.InnerTextAsync())}");
        if (station == "find")
        {
            if (_looked.Add("what is found"))
                await FindAsync(page, job);
            await page.GotoAsync($"/jobs/{job}/find/measure");
            await LookAsync(page, "measure");
            await page.GotoAsync($"/jobs/{job}/find/decide");
            await LookAsync(page, "decide");
            await page.EvalOnSelectorAsync("input[name=part][value=seal-ram]", "box => box.checked = true");
            await page.FillAsync("#why", "the ram seals leak");
        }

        if (looks && station == "prove" && _looked.Add("before a series"))
            await CompareAsync(page, job);
        if (station == "strip" && _looked.Add("work sheet"))
        {
            await page.ClickAsync("button:has-text('Print the work sheet')");
            Assert.Equal(1, await page.Locator("a:has-text('Work sheet')").CountAsync());
            await page.GotoAsync($"/jobs/{job}/now");
        }

        if (station == "price" && await page.Locator("#who").CountAsync() > 0)
            await page.FillAsync("#who", "R. Sedge, by telephone");
        if (station == "rebuild" && await page.Locator("#applied").CountAsync() > 0)
            await page.FillAsync("#applied", Figure().Match(await page.Locator("dt:text-is('Torque') + dd").InnerTextAsync()).Value);
        var run = page.Locator("button:has-text('Run on the simulated device')");
        await (station == "set" && await run.CountAsync() > 0 ? run.First : page.Locator("main .act").First).ClickAsync();
        await page.WaitForLoadStateAsync(LoadState.Load);
        if (station == "prove" && await page.Locator("[data-live]").CountAsync() > 0)
            await page.WaitForFunctionAsync("() => document.querySelector('h1').textContent === 'Series full'", null, new() { Timeout = 180_000 });
    }

    /// <summary>What is seen, checked, timed and recorded on a tool whose ram seals leak; every page on the way is looked at, in the end the plan stands proposed.</summary>
    private async Task FindAsync(IPage page, string job)
    {
        if (await page.Locator("input[name='s:pressure-decays']").CountAsync() == 0)
            return; // a model without symptoms
        await page.EvalOnSelectorAllAsync("details.seen", "all => all.forEach(d => d.open = true)");
        await LookAsync(page, "find, all open");
        await page.CheckAsync("input[name='s:pressure-decays'][value=seen]", new() { Force = true });
        await page.CheckAsync("input[name='s:slow'][value=not]", new() { Force = true });
        await page.ClickAsync("form .act");
        await LookAsync(page, "find, weighed");
        Assert.Contains("Ram seals leak inside", await page.Locator(".likely li").First.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator(".next .act").CountAsync());

        await page.GotoAsync($"/jobs/{job}/find/check/hold");
        await LookAsync(page, "check");
        await page.ClickAsync("button[name=outcome][value=falls]");
        await page.GotoAsync($"/jobs/{job}/find/measure");
        await page.EvalOnSelectorAllAsync("details.seen", "all => all.forEach(d => d.open = true)");
        await LookAsync(page, "measure, all open");
        await page.FillAsync("#r-advance-time", "4,2");
        await page.ClickAsync("#advance-time button");

        await page.GotoAsync($"/jobs/{job}/find/recording");
        await LookAsync(page, "recording, none yet");
        await page.SetInputFilesAsync("#file", Path.Combine(Checkout.Root, "tests", "Hydraulics.Tests", "Recordings", "bypass-leak.csv"));
        await page.ClickAsync("form .act");
        await page.WaitForLoadStateAsync(LoadState.Load);
        await LookAsync(page, "recording, read");
        Assert.Contains("Ram seal or relief seat leaks", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator("figure.stroke .broad svg").CountAsync());
        await page.GotoAsync($"/jobs/{job}/find/decide?remedy=reseal-ram"); // as the next act links to it
        await LookAsync(page, "decide, proposed");
        Assert.True(await page.Locator("input[name=remedy][value=reseal-ram]").IsCheckedAsync());
    }

    /// <summary>The tool's sensor is compared and the ram loaded up and down, as before a series, and all its pages are looked at.</summary>
    private async Task CompareAsync(IPage page, string job)
    {
        await page.GotoAsync($"/jobs/{job}/prove/compare");
        await LookAsync(page, "prove: compare");
        await page.SelectOptionAsync("#reference", "PG-1");
        await page.FillAsync("#points", "200; 200.5\n200; 200.6\n450; 450.5\n450; 450.6\n725; 725.5\n725; 725.6\n725; 725.4 down");
        await page.ClickAsync("main .act");
        await page.WaitForLoadStateAsync(LoadState.Load);
        Assert.Contains("The sensor is fit.", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await LookAsync(page, "prove: compared");
        await page.GotoAsync($"/jobs/{job}/prove/reference?with=memory");
        Assert.Contains("reference of the comparison", await page.Locator("main").InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        await LookAsync(page, "prove: the memory as reference");
        await page.GotoAsync($"/jobs/{job}/prove/friction");
        await page.FillAsync("#loops", "61.10; 61.42\n61.05; 61.38\n61.12; 61.40");
        await page.ClickAsync("main .act");
        await page.WaitForLoadStateAsync(LoadState.Load);
        await LookAsync(page, "prove: friction");
        await page.GotoAsync($"/jobs/{job}/prove/memory");
        await LookAsync(page, "prove: memory");
        await page.GotoAsync($"/jobs/{job}/prove");
    }

    /// <summary>Holds a page that was not looked at yet against axe.</summary>
    private async Task LookAsync(IPage page, string name)
    {
        if (!_looked.Add(name.StartsWith("prove: Take run", StringComparison.Ordinal) ? "prove: Take run" : name))
            return;
        foreach (AxeResultItem violation in (await page.RunAxe()).Violations)
            _violations.Add($"{name}: {violation.Id}: {violation.Nodes[0].Html}");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        foreach (AxeResultItem violation in (await page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Rules("color-contrast") })).Violations)
            _violations.Add($"{name}, dark: {violation.Id}: {violation.Nodes[0].Html}");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }

    private static async Task<string> TextOfAsync(string path, byte[] pdf)
    {
        await File.WriteAllBytesAsync(path, pdf);
        using var tool = Process.Start(new ProcessStartInfo("pdftotext", ["-layout", path, "-"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        return await tool.StandardOutput.ReadToEndAsync();
    }

    [GeneratedRegex("/jobs/(?<job>[A-Z]+-[0-9]+)")]
    private static partial Regex JobInUrl();

    [GeneratedRegex("/jobs/[A-Z]+-[0-9]+/(?<station>[a-z]+)")]
    private static partial Regex StationInUrl();

    [GeneratedRegex("[0-9.]+")]
    private static partial Regex Figure();
}
