using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class PlanVerbTests
{
    [Theory]
    [InlineData("corrie-85")]
    [InlineData("corrie-120")]
    [InlineData("skerry-52")]
    public async Task Every_part_of_every_bundled_model_that_comes_off_has_a_proven_plan(string model)
    {
        var parts = (await Run.Of("parts", model, "--json")).Json["parts"]!.AsArray();
        Assert.True(parts.Count >= 35, $"{model} has {parts.Count} parts");
        var run = await Run.Of("plan", model, "--for", (string)parts[^1]!["id"]!, "--json");
        Assert.Contains(run.Exit, new[] { 0, 1 });
    }

    [Fact]
    public async Task Every_pinned_key_is_there_and_the_steps_add_up()
    {
        var run = await Run.Of("plan", "corrie-85", "--for", "seal-ram", "--rebuild", "--json");
        Assert.Equal(0, run.Exit);
        var json = run.Json;
        Assert.Equal("ramwright/plan/1", (string?)json["schema"]);
        Assert.True((bool)json["provenOptimal"]!);
        Assert.Equal(0m, (decimal)json["gap"]!);
        Assert.True((double)json["safeMinutes"]! > (double)json["totalMinutes"]!);
        Assert.Equal((double)json["totalMinutes"]!, json["steps"]!.AsArray().Sum(s => (double)s!["minutes"]!), 1e-4);
        foreach (var key in new[] { "totalCost", "currency", "renew", "tooling" })
            Assert.True(json.ContainsKey(key), key);
        foreach (var step in json["steps"]!.AsArray())
            Assert.True(step!.AsObject().ContainsKey("tool") && (string)step["operation"]! != "" && (string)step["part"]! != "");
        Assert.NotEmpty(json["rebuild"]!["steps"]!.AsArray());
    }

    [Fact]
    public async Task A_part_that_does_not_exist_is_named_with_a_near_one()
    {
        var run = await Run.Of("plan", "corrie-85", "--for", "seal-rom", "--json");
        Assert.Equal(2, run.Exit);
        Assert.Contains("seal-ram", (string)run.Json["mistakes"]![0]!["mend"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_model_with_mistakes_is_bad_input_to_plan_and_a_no_to_check()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("m.yaml", "format: ramwright/1\ntool: { id: m-1, name: M 1, kind: punching }\nlimits: { pressure: 679 bar .. 721, nominal: 700 bar, maximum: 735 bar, proof-runs: 5, rest: 40 s }\n");
        Assert.Equal(2, (await Run.Of("plan", path, "--for", "ram", "--json")).Exit);
        var check = await Run.Of("check", path, "--json");
        Assert.Equal(1, check.Exit);
        Assert.Equal(3, (int)check.Json["mistakes"]![0]!["line"]!);
    }
}
