using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class UncertaintyVerbTests
{
    private const string Head = "format: ramwright-budget/1\nresult: { name: length, unit: mm }\n";

    // By hand: u² = (0.03/√3)² + (0.02/2)² mm², k 1.96
    private const string Plain = Head + "model: a + b\ninputs:\n  a: { value: 10 mm, parts: { caliper: { rectangular: 0.03 mm, effect: systematic } } }\n  b: { value: 2 cm, parts: { block: { expanded: 20 µm, k: 2, effect: systematic } } }\n";

    [Fact]
    public async Task A_result_stands_first_and_every_part_under_it()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("uncertainty", folder.Write("b.yaml", Plain.Replace("20 µm", "40 µm", StringComparison.Ordinal)));
        Assert.Equal(0, run.Exit);
        var lines = run.Data.Split('\n');
        Assert.Equal("length = 30.000 mm ± 0.052 mm  (95 %, k = 1.96)", lines[0]);
        Assert.Equal("  standard uncertainty 0.0265 mm: 0.0265 mm the same in every run, 0.0000 mm new in each; effective degrees of freedom infinite", lines[1]);
        Assert.StartsWith("  by simulation: 30.000 mm, standard uncertainty 0.0", lines[2], StringComparison.Ordinal);
        Assert.Contains(lines, l => l.Contains("b      block    0.004 cm expanded, k = 2", StringComparison.Ordinal) && l.Contains("57.1 %", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Programs_get_it_unrounded_in_the_units_of_the_file()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("uncertainty", folder.Write("b.yaml", Plain), "--json");
        var json = run.Json;
        Assert.Equal("ramwright/uncertainty/1", (string?)json["schema"]);
        Assert.Equal(30, (double)json["value"]!, 1e-12);
        Assert.Equal(Math.Sqrt(0.03 * 0.03 / 3 + 0.0001), (double)json["standardUncertainty"]!, 1e-12);
        Assert.Equal(1.959963984540054, (double)json["coverageFactor"]!, 1e-12);
        Assert.Null(json["degreesOfFreedom"]);
        Assert.Equal(1, (double)json["lines"]![0]!["sensitivity"]!, 1e-12);
        Assert.Equal(10, (double)json["lines"]![1]!["sensitivity"]!, 1e-12); // b stands in cm: 10 mm for each
        Assert.Equal(0.002, (double)json["lines"]![1]!["stated"]!, 1e-12);
    }

    [Fact]
    public async Task A_mistake_is_told_at_its_line_and_column()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("uncertainty", folder.Write("b.yaml", Plain.Replace("model: a + b", "model: a + c", StringComparison.Ordinal)), "--json");
        Assert.Equal(2, run.Exit);
        var mistakes = run.Json["mistakes"]!.AsArray();
        Assert.Equal(("unknown-input", 3, 12), ((string?)mistakes[0]!["code"], (int)mistakes[0]!["line"]!, (int)mistakes[0]!["column"]!));
    }

    [Fact]
    public async Task A_model_that_fails_in_some_trials_is_undecided()
    {
        using var folder = new TemporaryFolder();
        var run = await Run.Of("uncertainty", folder.Write("b.yaml", Head + "model: a * sqrt(n)\ninputs:\n  a: { value: 10 mm }\n  n: { value: 1, parts: { x: { normal: 0.5, effect: random } } }\n"));
        Assert.Equal(3, run.Exit);
        Assert.Contains("the model has no value", run.Data, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_most_trials_are_kept_and_said()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("b.yaml", Head + "model: a\ninputs:\n  a: { value: 10 mm, parts: { x: { normal: 0.0997 mm, dof: 1, effect: random } } }\n");
        var run = await Run.Of("uncertainty", path, "--most-trials", "40000");
        Assert.Equal(3, run.Exit);
        Assert.Contains("(40,000 trials, seed 1)", run.Data, StringComparison.Ordinal);
        Assert.Contains("did not settle", run.Data, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--coverage", "1.5")]
    [InlineData("--seed", "-1")]
    [InlineData("--most-trials", "5")]
    public async Task A_strange_option_is_bad_use(string option, string value)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(2, (await Run.Of("uncertainty", folder.Write("b.yaml", Plain), option, value)).Exit);
    }
}
