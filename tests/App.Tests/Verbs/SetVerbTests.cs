using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

/// <summary>The bundled corrie-85 wants 700 bar in 679..721, maximum 735, and clockwise raises; skerry-52 wants 630 in 605..655, maximum 670, and clockwise lowers.</summary>
public sealed class SetVerbTests
{
    [Fact]
    public async Task Every_pinned_key_is_there()
    {
        var run = await Run.Of("set", "corrie-85", "--readings", "0:612", "--json");
        Assert.Equal(0, run.Exit);
        var json = run.Json;
        Assert.Equal("ramwright/set/1", (string?)json["schema"]);
        Assert.Equal(44.87, (double)json["prior"]!["barPerTurn"]!, 0.01);
        Assert.Equal("clockwise", (string?)json["advice"]!["direction"]);
        Assert.InRange((double)json["advice"]!["degrees"]!, 360, 720);
        var predicted = json["predicted"]!;
        Assert.True((double)predicted["low"]! < (double)predicted["mean"]! && (double)predicted["mean"]! < (double)predicted["high"]!);
        Assert.InRange((double)json["chanceInWindow"]!, 0.3, 1);
        Assert.InRange((double)json["chancePastMaximum"]!, 0, 0.001);
        Assert.Empty(json["suspicions"]!.AsArray());
    }

    [Theory]
    [InlineData("corrie-85", "0:640", "clockwise", 0)]
    [InlineData("corrie-85", "0:760", "anticlockwise", 0)]
    [InlineData("skerry-52", "0:580", "anticlockwise", 0)]
    [InlineData("skerry-52", "0:690", "clockwise", 0)]
    [InlineData("corrie-85", "0:640,420:697", "stop", 0)]
    [InlineData("skerry-52", "0:580,-450:629", "stop", 0)]
    [InlineData("corrie-85", "0:600,600:602", "stop", 1)]
    [InlineData("corrie-85", "0:730;0:671;0:727;0:668;0:733;0:676;0:722", "stop", 3)]
    public async Task Direction_and_exit_follow_the_runs(string model, string readings, string direction, int exit)
    {
        var run = await Run.Of("set", model, "--readings", readings, "--json");
        Assert.Equal(exit, run.Exit);
        Assert.Equal(direction, (string?)run.Json["advice"]!["direction"]);
    }

    [Fact]
    public async Task A_second_reading_at_the_same_position_narrows_what_is_known()
    {
        var once = (await Run.Of("set", "corrie-85", "--readings", "0:695", "--json")).Json["predicted"]!;
        var twice = (await Run.Of("set", "corrie-85", "--readings", "0:695,0:697", "--json")).Json["predicted"]!;
        Assert.True((double)twice["high"]! - (double)twice["low"]! < (double)once["high"]! - (double)once["low"]!);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("0:")]
    [InlineData("0:612:3")]
    [InlineData("0:NaN")]
    [InlineData("NaN:612")]
    [InlineData("0:Infinity")]
    [InlineData("0:-612")]
    [InlineData("0:0")]
    [InlineData("0:6120")]
    [InlineData("0:1e300")]
    [InlineData("1e300:612")]
    [InlineData("0:612,5")]
    public async Task A_reading_that_cannot_be_one_turns_no_screw(string readings)
    {
        var run = await Run.Of("set", "corrie-85", "--readings", readings);
        Assert.Equal(2, run.Exit);
        Assert.Equal("", run.Data);
        Assert.Contains("mend:", run.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_decimal_point_is_asked_back_with_what_was_meant() =>
        Assert.Contains("write 612", (await Run.Of("set", "corrie-85", "--readings", "0:6120")).Words, StringComparison.Ordinal);

    [Fact]
    public async Task A_run_above_the_maximum_says_quarantine() =>
        Assert.Contains("quarantine", (await Run.Of("set", "corrie-85", "--readings", "0:690,30:752")).Data, StringComparison.Ordinal);

    [Fact]
    public async Task A_smaller_risk_and_a_coarser_device_turn_less()
    {
        var usual = Degrees(await Run.Of("set", "corrie-85", "--readings", "0:612", "--json"));
        Assert.True(Degrees(await Run.Of("set", "corrie-85", "--readings", "0:612", "--risk", "0.0001", "--json")) < usual);
        Assert.True(Degrees(await Run.Of("set", "corrie-85", "--readings", "0:612", "--systematic", "24bar", "--json")) < usual);
        Assert.True(Degrees(await Run.Of("set", "corrie-85", "--readings", "0:612", "--peak-capture", "12bar", "--json")) < usual);
        Assert.Equal(2, (await Run.Of("set", "corrie-85", "--readings", "0:612", "--risk", "1.5")).Exit);

        static double Degrees(Run run) => (double)run.Json["advice"]!["degrees"]!;
    }

    [Fact]
    public async Task After_a_rebuild_the_start_is_low_and_needs_no_reading()
    {
        var run = await Run.Of("set", "skerry-52", "--rebuilt", "--json");
        Assert.Equal(0, run.Exit);
        Assert.Equal("anticlockwise", (string?)run.Json["advice"]!["direction"]);
        Assert.InRange((double)run.Json["predicted"]!["mean"]!, 480, 0.8 * 630);
        Assert.Equal(2, (await Run.Of("set", "skerry-52", "--rebuilt", "--readings", "0:500")).Exit);
    }
}
