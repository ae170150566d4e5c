using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class DiagnoseVerbTests
{
    [Fact]
    public async Task Faults_come_by_probability_with_reasons_and_the_next_act_with_its_price()
    {
        var run = await Run.Line("diagnose corrie-85 --seen pressure-decays --not-seen slow --json");
        Assert.Equal(0, run.Exit);
        Assert.Equal("ramwright/diagnose/1", (string?)run.Json["schema"]);
        Assert.Equal("bypass-leaks", (string?)run.Json["faults"]![0]!["id"]);
        Assert.InRange((double)run.Json["faults"]![0]!["probability"]!, 0.4, 0.9);
        Assert.NotEmpty(run.Json["faults"]![0]!["reasons"]!.AsArray());
        var next = run.Json["next"]!;
        Assert.True((double)next["minutes"]! > 0 && (double)next["price"]! > 0);
        Assert.Contains("would point to", (string?)next["why"], StringComparison.Ordinal);
        Assert.True((double)run.Json["expectedCost"]! >= (double)next["price"]!);
    }

    [Fact]
    public async Task A_measured_value_takes_the_place_of_what_was_seen()
    {
        var run = await Run.Line("diagnose corrie-85 --seen slow --measured advance-time=6.4s --json");
        Assert.Equal("slow over the whole stroke", (string?)run.Json["leftOut"]![0]!["datum"]);
        Assert.Equal("low-fill", (string?)run.Json["faults"]![0]!["id"]);
    }

    [Theory]
    [InlineData("diagnose corrie-85 --seen slo", "unknown-symptom", "write slow")]
    [InlineData("diagnose corrie-85 --seen slow --not-seen slow", "usage", "leave one of the two out")]
    [InlineData("diagnose corrie-85 --check hold=fall", "usage", "write one of falls, holds")]
    [InlineData("diagnose corrie-85 --check holt=falls", "unknown-check", "write hold")]
    [InlineData("diagnose corrie-85 --tried renew-packs", "unknown-remedy", "write renew-pack")]
    [InlineData("diagnose corrie-85 --measured advance-time=fast", "usage", "write a value above zero with its unit, such as advance-time=4.1s")]
    [InlineData("diagnose corrie-85 --measured hold-0=530bar", "usage", "add hold-60=455bar: pressure 60 s later, the oil's cooling included")]
    public async Task What_cannot_be_taken_is_said_with_its_remedy(string line, string code, string mend)
    {
        var run = await Run.Line(line + " --json");
        Assert.Equal(2, run.Exit);
        Assert.Equal((code, mend), ((string?)run.Json["mistakes"]![0]!["code"], (string?)run.Json["mistakes"]![0]!["mend"]));
    }

    [Fact]
    public async Task Nothing_that_speaks_for_a_fault_is_said_so()
    {
        var run = await Run.Line("diagnose corrie-85 --not-seen slow,dead --json");
        Assert.Equal((0, true, "run"), (run.Exit, (bool)run.Json["nothingSpeaks"]!, (string?)run.Json["next"]!["act"]));
    }

    // asia.bif and its posterior: tests/Diagnosis.Tests/Networks/Published
    [Fact]
    public async Task A_published_network_gives_its_published_posterior()
    {
        var file = Path.Combine(Checkout.Root, "tests/Diagnosis.Tests/Networks/Published/asia.bif");
        var run = await Run.Of("kernel", "network", file, "--of", "lung", "--json");
        Assert.Equal(0.055, (double)run.Json["posterior"]!["yes"]!, 1e-9);
        var impossible = await Run.Of("kernel", "network", file, "--of", "smoke", "--given", "tub=yes,either=no");
        Assert.Equal(3, impossible.Exit);
        Assert.Equal(2, (await Run.Of("kernel", "network", file, "--of", "lungs")).Exit);
        Assert.Equal(2, (await Run.Of("kernel", "network", file + "x", "--of", "lung")).Exit);
    }
}
