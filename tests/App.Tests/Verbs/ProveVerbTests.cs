using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class ProveVerbTests
{
    private const string Twelve = "701.2\n698.4\n703.0\n699.7\n700.6\n697.9\n702.1\n700.9\n699.1\n701.7\n698.8\n700.4\n";

    [Fact]
    public async Task Twelve_close_runs_conform_and_every_pinned_key_is_there()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "peak_bar\n" + Twelve), "--model", "corrie-85", "--systematic", "4bar", "--json");
        Assert.Equal(0, run.Exit);
        var json = run.Json;
        Assert.Equal("ramwright/prove/1", (string?)json["schema"]);
        Assert.Equal("conforms", (string?)json["verdict"]);
        Assert.Equal(12, (int?)json["n"]);
        Assert.Equal(683, (double)json["guardLow"]!, 1e-9);
        Assert.Equal(717, (double)json["guardHigh"]!, 1e-9);
        // One-sided factor for n 12, 95 %, 95 %: Montgomery & Runger, 7th ed., Table XII prints 2.736.
        Assert.Equal(2.736, (double)json["oneSidedFactor"]!, 0.0005);
        foreach (var key in new[] { "reasons", "unit", "plannedRuns", "mean", "standardDeviation", "rule", "scatterFrom", "scatterUsed", "moderation", "extension", "oneSidedFactor", "coverage", "confidence", "claims", "toleranceFactor", "intervalLow", "intervalHigh", "flags" })
            Assert.True(json.ContainsKey(key), key);
        Assert.Equal(2, json["claims"]!.AsArray().Count);
        Assert.All(json["claims"]!.AsArray(), c => Assert.True((bool)c!["holds"]! && (double)c["shareShown"]! > 0.95));
    }

    [Fact]
    public async Task Earlier_series_moderate_the_scatter_and_the_json_says_so()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.csv", "peak_bar\n" + Twelve);
        var earlier = folder.Write("earlier.csv", "# made up\ndeviation_bar;runs\n" + string.Concat(new[] { "4,6", "5,3", "4,9", "5,8", "4,4", "5,1", "4,8", "5,5" }.Select(s => s + ";12\n")));
        var json = (await Run.Of("prove", path, "--model", "corrie-85", "--earlier", earlier, "--json")).Json;
        Assert.Equal(("moderated", "claims"), ((string?)json["scatterFrom"], (string?)json["rule"]));
        Assert.Equal(8, (int)json["moderation"]!["earlierSeries"]!);
        Assert.InRange((double)json["scatterUsed"]!, 2, 5); // 1.6 bar of its own, pulled towards 5 bar
        var few = await Run.Of("prove", path, "--model", "corrie-85", "--earlier", folder.Write("few.csv", "deviation_bar;runs\n4.6;12\n"), "--json");
        Assert.Equal((2, "too-few-series"), (few.Exit, (string?)few.Json["mistakes"]![0]!["code"]));
        var zero = await Run.Of("prove", path, "--model", "corrie-85", "--earlier", folder.Write("zero.csv", "deviation_bar;runs\n0;12\n"), "--json");
        Assert.Equal((2, "bad-number"), (zero.Exit, (string?)zero.Json["mistakes"]![0]!["code"]));
        var bare = await Run.Of("prove", path, "--model", "corrie-85", "--earlier", folder.Write("bare.csv", "4.6;12\n"), "--json");
        Assert.Equal("missing-header", (string?)bare.Json["mistakes"]![0]!["code"]);
    }

    [Fact]
    public async Task An_extension_is_declared_and_goes_with_claims_by_own_scatter_alone()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.csv", "peak_bar\n" + Twelve);
        var json = (await Run.Of("prove", path, "--window", "696..705", "--extension", "12+12", "--json")).Json;
        Assert.Equal("undecided", (string?)json["verdict"]);
        Assert.Contains(json["reasons"]!.AsArray(), r => (string?)r!["code"] == "extension-due");
        Assert.InRange((double)json["extension"]!["confidenceOfEachLook"]!, 0.95, 0.975);
        foreach (var strange in new[] { "12", "12+0", "1+12", "a+b" })
            Assert.Equal(2, (await Run.Of("prove", path, "--window", "679..721", "--extension", strange)).Exit);
        Assert.Equal(2, (await Run.Of("prove", path, "--window", "679..721", "--extension", "12+12", "--rule", "interval")).Exit);
        Assert.Equal(2, (await Run.Of("prove", path, "--window", "679..721", "--extension", "12+12", "--runs", "24")).Exit);
    }

    [Theory]
    [InlineData("claims")]
    [InlineData("interval")]
    [InlineData("every-run")]
    public async Task The_rule_can_be_chosen_and_is_told(string rule)
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "peak_bar\n" + Twelve), "--window", "679..721", "--rule", rule, "--json");
        Assert.Equal((0, rule), (run.Exit, (string?)run.Json["rule"]));
    }

    [Fact]
    public async Task Fewer_readings_than_planned_are_undecided_and_more_are_refused()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.csv", "peak_bar\n" + Twelve);
        Assert.Equal(3, (await Run.Of("prove", path, "--window", "679..721", "--runs", "13", "--json")).Exit);
        var more = await Run.Of("prove", path, "--window", "679..721", "--runs", "11", "--json");
        Assert.Equal(2, more.Exit);
        Assert.Equal("too-many-runs", (string?)more.Json["mistakes"]![0]!["code"]);
    }

    [Fact]
    public async Task No_reading_is_bad_input_and_one_reading_is_undecided()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(2, (await Run.Of("prove", folder.Write("none.csv", "peak_bar\n"), "--window", "679..721")).Exit);
        Assert.Equal(3, (await Run.Of("prove", folder.Write("one.csv", "peak_bar\n700.1\n"), "--window", "679..721")).Exit);
    }

    [Fact]
    public async Task A_run_far_outside_does_not_conform()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "peak_bar\n" + Twelve.Replace("699.7", "731", StringComparison.Ordinal)), "--window", "679..721", "--systematic", "4bar", "--json");
        Assert.Equal(1, run.Exit);
        Assert.Equal("does-not-conform", (string?)run.Json["verdict"]);
        Assert.Equal("run-outside", (string?)run.Json["reasons"]![0]!["code"]);
    }

    [Fact]
    public async Task A_comma_that_may_be_separator_or_decimal_is_refused()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "701,2\n698,4\n703,0\n"), "--window", "679..721", "--unit", "bar", "--json");
        Assert.Equal(2, run.Exit);
        Assert.Equal("ambiguous-separator", (string?)run.Json["mistakes"]![0]!["code"]);
    }

    [Fact]
    public async Task Peak_capture_moves_the_upper_limit_alone()
    {
        using var folder = new TemporaryFolder();
        var json = (await Run.Of("prove", folder.Write("a.csv", "peak_bar\n" + Twelve), "--window", "679..721", "--systematic", "4bar", "--peak-capture", "3bar", "--json")).Json;
        Assert.Equal(683, (double)json["guardLow"]!, 1e-9);
        Assert.Equal(714, (double)json["guardHigh"]!, 1e-9);
        Assert.Equal(7, (double)json["systematic"]!["aboveReading"]!, 1e-9);
    }

    [Fact]
    public async Task Void_runs_are_told_with_their_cause_and_do_not_count()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.csv", "run;peak_bar;void\n1;701.2;\n2;655.0;trigger let go too early\n3;698.4;\n4;;cable pulled\n");
        var json = (await Run.Of("prove", path, "--window", "679..721", "--runs", "2", "--json")).Json;
        Assert.Equal(2, (int)json["n"]!);
        Assert.Equal(["trigger let go too early", "cable pulled"], json["voidRuns"]!.AsArray().Select(v => (string?)v!["cause"]));
        Assert.Equal([2, 4], json["voidRuns"]!.AsArray().Select(v => (int)v!["run"]!));
        var text = (await Run.Of("prove", path, "--window", "679..721", "--runs", "2")).Data;
        Assert.Contains("2 runs count, 2 are void:", text, StringComparison.Ordinal);
        Assert.Contains("run 2 (line 3, 655 bar): trigger let go too early", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("679..721", "bar", 701.2, true)]
    [InlineData("679..721bar", "bar", 701.2, true)]
    [InlineData("67.9..72.1MPa", "MPa", 70.12, true)]
    [InlineData("679..721 --unit bar", "bar", 701.2, false)]
    public async Task Bare_numbers_take_the_unit_of_the_limits_and_that_is_said(string window, string unit, double first, bool assumed)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.csv", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{first}\n{first}\n"));
        var run = await Run.Line($"prove {path} --window {window} --runs 12 --json");
        Assert.Equal(3, run.Exit);
        Assert.Equal("bar", (string?)run.Json["unit"]);
        Assert.Equal(unit, (string?)run.Json["readingsUnit"]);
        Assert.Equal(assumed ? ["unit"] : [], run.Json["assumed"]!.AsArray().Select(a => (string?)a));
        Assert.Equal(701.2, (double)run.Json["mean"]!, 1e-9);
        Assert.Equal(assumed, run.Words.Contains($"taken as {unit}", StringComparison.Ordinal));
    }

    [Fact]
    public async Task No_unit_is_assumed_where_the_readings_would_then_lie_far_off()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "70.1\n69.9\n"), "--window", "679..721", "--json");
        Assert.Equal(2, run.Exit);
        Assert.Equal("missing-unit", (string?)run.Json["mistakes"]![0]!["code"]);
    }

    [Fact]
    public async Task A_force_becomes_a_pressure_by_the_ram_and_what_spring_and_friction_hold_back()
    {
        // By hand, for the made-up Corrie 85: ram 39.3 mm, so 1213.0 mm²; spring 1450 N + 12 N/mm x 20 mm = 1690 N; friction 150 N + 1 % of 700 bar on the ram = 849.1 N.
        // 82.22 kN + 2.689 kN over 1213.0 mm² is 70.0 MPa.
        using var folder = new TemporaryFolder();
        var run = await Run.Of("prove", folder.Write("a.csv", "force_kN\n82.22\n82.22\n"), "--model", "corrie-85", "--json");
        Assert.Equal(700.0, (double)run.Json["mean"]!, 0.05);
        Assert.Contains("2.69 kN", (await Run.Of("prove", folder.Write("b.csv", "force_kN\n82.22\n82.22\n"), "--model", "corrie-85")).Data, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--window", "721..679")]
    [InlineData("--window", "679..9999")]
    [InlineData("--window", "679..721 --systematic 1e308")]
    [InlineData("--window", "679..721 --peak-capture -1")]
    [InlineData("--window", "679..721 --coverage NaN")]
    [InlineData("--window", "679..721 --runs 1000000000")]
    [InlineData("--window", "679")]
    [InlineData("--window", "679..721 --coverage 1")]
    [InlineData("--window", "679..721 --systematic -4bar")]
    [InlineData("--window", "679..721 --systematic lots")]
    [InlineData("--window", "679..721 --model corrie-85")]
    [InlineData("--window", "679..721 --runs 1")]
    [InlineData("--window", "679..721 --unit furlong")]
    [InlineData("--model", "no-such-model")]
    public async Task Bad_options_are_bad_input(string option, string rest)
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Line($"prove {folder.Write("a.csv", "peak_bar\n" + Twelve)} {option} {rest} --json");
        Assert.Equal(2, run.Exit);
        Assert.NotEmpty(run.Json["mistakes"]!.AsArray());
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named()
    {
        var run = await Run.Of("prove", "no/such/file.csv", "--window", "679..721");
        Assert.Equal(2, run.Exit);
        Assert.Contains("no/such/file.csv", run.Words, StringComparison.Ordinal);
    }
}
