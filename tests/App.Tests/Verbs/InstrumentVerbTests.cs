using System.Net;
using System.Net.Sockets;
using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class InstrumentVerbTests
{
    [Fact]
    public async Task Runs_of_a_simulated_device_come_as_a_file_that_prove_takes()
    {
        using var folder = new TemporaryFolder();
        var read = await Run.Of("instrument", "read", "simulated", "--runs", "12", "--model", "corrie-85");
        Assert.Equal(0, read.Exit);
        Assert.StartsWith("run,peak_bar,highest_bar,method\n1,", read.Data.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Equal(0, (await Run.Of("prove", folder.Write("a.csv", read.Data), "--model", "corrie-85")).Exit);
    }

    [Theory]
    [InlineData("scpi-tcp 127.0.0.1:PORT ask READ? in bar every 2 ms")]
    [InlineData("modbus-tcp 127.0.0.1:PORT input address 0 as float32 in bar every 2 ms")]
    public async Task One_verb_reads_what_the_other_acts(string connection)
    {
        var text = connection.Replace("PORT", FreePort(), StringComparison.Ordinal);
        var acting = Run.Of("instrument", "simulate", text, "--peak", "700bar", "--stroke", "2s", "--rest", "0.5s", "--for", "40s");
        var json = (await Run.Of("instrument", "read", text, "--for", "15s", "--model", "corrie-85", "--json")).Json;
        Assert.Equal("ramwright/instrument-read/1", (string?)json["schema"]);
        // On a busy machine readings may be missing near a peak; then the run is told as not taken, never guessed.
        Assert.True(json["runs"]!.AsArray().Count + json["notTaken"]!.AsArray().Count >= 2, json.ToJsonString());
        Assert.All(json["runs"]!.AsArray(), r => Assert.InRange((double)r!["peakBar"]!, 600, 730));
        Assert.Equal(0, (await acting).Exit);
    }

    [Fact]
    public async Task A_device_that_is_not_there_is_told_and_the_answer_is_no()
    {
        var text = $"scpi-tcp 127.0.0.1:{FreePort()} ask READ? in bar";
        var run = await Run.Of("instrument", "read", text, "--runs", "1", "--for", "4s", "-q");
        Assert.Equal((1, ""), (run.Exit, run.Data));
        Assert.Contains("nothing listens at this port", run.Words, StringComparison.Ordinal);
        Assert.Equal("not-reached", (string?)(await Run.Of("instrument", "read", text, "--for", "4s", "--json")).Json["lost"]![0]!["fault"]);
    }

    [Theory]
    [InlineData("scpi-tcp 10.0.0.5:5025 ask READ?", "missing-clause")]
    [InlineData("", "unknown-connection")]
    [InlineData("no-such-file.txt", "unknown-connection")]
    [InlineData("simulated", "usage")]
    [InlineData("scpi-tcp 10.0.0.5:5025 ask READ? in kN", "unit-needs-area")]
    public async Task A_bad_connection_is_bad_input(string text, string code)
    {
        var run = await Run.Of("instrument", "read", text, "--json");
        Assert.Equal((2, code), (run.Exit, (string?)run.Json["mistakes"]![0]!["code"]));
    }

    [Fact]
    public async Task A_file_may_hold_the_connection_and_a_folder_does_not()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Run.Of("instrument", "read", folder.Write("meter.txt", "# practice\nsimulated\n"), "--runs", "1")).Exit);
        Assert.Equal(2, (await Run.Of("instrument", "read", folder.Path, "--runs", "1")).Exit);
        Assert.Equal(2, (await Run.Of("instrument", "read", folder.Write("empty.txt", ""), "--runs", "1")).Exit);
        Assert.Equal(2, (await Run.Of("instrument", "read", folder.Write("huge.txt", new string('x', 1_000_000)), "--runs", "1")).Exit);
    }

    [Theory]
    [InlineData("--for", "soon")]
    [InlineData("--for", "0s")]
    [InlineData("--runs", "0")]
    [InlineData("--model", "skerry-99")]
    public async Task A_bad_option_is_bad_use(string option, string value) =>
        Assert.Equal(2, (await Run.Of("instrument", "read", "simulated", "--runs", "1", option, value)).Exit);

    [Fact]
    public async Task A_port_that_is_held_or_a_kind_that_is_not_acted_is_said()
    {
        using var held = new TcpListener(IPAddress.Loopback, 0);
        held.Start();
        var port = ((IPEndPoint)held.LocalEndpoint).Port;
        Assert.Equal(70, (await Run.Of("instrument", "simulate", $"scpi-tcp 127.0.0.1:{port} ask READ? in bar", "--for", "5s")).Exit);
        Assert.Equal(2, (await Run.Of("instrument", "simulate", "simulated", "--for", "5s")).Exit);
    }

    private static string FreePort()
    {
        using var socket = new TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return ((IPEndPoint)socket.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
