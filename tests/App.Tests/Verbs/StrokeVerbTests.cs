using System.Globalization;
using System.Xml.Linq;
using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class StrokeVerbTests
{
    [Fact]
    public async Task A_sound_tool_opens_at_its_nominal_pressure_and_comes_home()
    {
        var run = await Run.Of("stroke", "corrie-85", "--json");
        Assert.Equal(0, run.Exit);
        Assert.Equal("ramwright/stroke/1", (string?)run.Json["schema"]);
        Assert.Equal("home", (string?)run.Json["end"]);
        Assert.Equal(700, (double)run.Json["openedBar"]!, 0.05);
        Assert.Equal(4.08, (double)run.Json["advanceSeconds"]!, 0.05);
        Assert.InRange((int)run.Json["steps"]!, 50, 500);
        Assert.Equal("trigger-pulled", (string?)run.Json["events"]![0]!["event"]);
    }

    [Theory]
    [InlineData("--with relief=590bar", "openedBar", 589.9, 590.1)]
    [InlineData("--with filling=60%", "advanceSeconds", 6.3, 6.6)]
    [InlineData("--with oil=22ml", "drawnMillilitres", 21.999, 22.001)]
    public async Task A_fault_shows_where_it_should(string options, string key, double least, double most)
    {
        var run = await Run.Line($"stroke corrie-85 {options} --json");
        Assert.InRange((double)run.Json[key]!, least, most);
    }

    [Fact]
    public async Task A_recording_and_its_picture_are_written()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "s.csv");
        var run = await Run.Of("stroke", "corrie-85", "--rate", "500Hz", "--noise", "7", "--out", path);
        Assert.Equal(0, run.Exit);
        var rows = await File.ReadAllLinesAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal("time_s,pressure_bar,current_A", rows[0]);
        Assert.All(rows.Skip(1), row => Assert.All(row.Split(','), cell => double.Parse(cell, CultureInfo.InvariantCulture)));
        Assert.Equal("0.002", rows[2].Split(',')[0]);
        var picture = XDocument.Load(Path.ChangeExtension(path, ".svg"));
        Assert.Equal("svg", picture.Root!.Name.LocalName);
        Assert.Contains("relief opened", picture.Root.Value, StringComparison.Ordinal);

        var again = Path.Combine(folder.Path, "t.csv");
        await Run.Of("stroke", "corrie-85", "--rate", "500Hz", "--noise", "7", "--out", again);
        Assert.Equal(rows, await File.ReadAllLinesAsync(again, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("--with aire=4%", "no fault of the stroke model is called 'aire'", "write air")]
    [InlineData("--with air=90%", "air of 90% is out of range", "write 0 % to 30 %")]
    [InlineData("--with air=4%,air=5%", "air stands there 2 times", "give each fault one value")]
    [InlineData("--load soft", "'soft' is no load", "write close, or connector=")]
    [InlineData("--load connector=48", "'48' is no force", "connector=48kN")]
    [InlineData("--rate 1000", "'1000' is no rate", "1kHz")]
    [InlineData("--pause 420", "'420' is no pressure", "420bar")]
    [InlineData("--out s.txt", "'s.txt' is no CSV file", ".csv")]
    public async Task What_cannot_be_taken_is_said_with_the_remedy(string options, string what, string mend)
    {
        var run = await Run.Line($"stroke corrie-85 {options} --json");
        Assert.Equal(2, run.Exit);
        Assert.Contains(what, (string?)run.Json["mistakes"]![0]!["what"], StringComparison.Ordinal);
        Assert.Contains(mend, (string?)run.Json["mistakes"]![0]!["mend"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_model_of_limits_alone_says_what_is_missing()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("m.yaml", "format: ramwright/1\ntool: { id: m-1, name: M 1, kind: punching }\nlimits: { pressure: 679 bar .. 721 bar, nominal: 700 bar, maximum: 735 bar, proof-runs: 5, rest: 40 s }\n");
        var run = await Run.Of("stroke", path, "--json");
        Assert.Equal(2, run.Exit);
        Assert.Equal("no-behaviour", (string?)run.Json["mistakes"]![0]!["code"]);
        Assert.Contains("behaviour.ram, behaviour.pump, behaviour.drive, behaviour.oil", (string?)run.Json["mistakes"]![0]!["what"], StringComparison.Ordinal);
    }
}
