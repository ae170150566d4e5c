using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class PartsVerbTests
{
    [Fact]
    public async Task What_is_left_over_from_a_kit_is_told()
    {
        // A kit of two rings for 4 EUR is cheaper than one loose ring for 6 EUR, so the other ring is left over. Invented.
        using var folder = new TemporaryFolder();
        var model = folder.Write("m.yaml", """
            format: ramwright/1
            tool: { id: m-1, name: M 1, kind: punching }
            limits: { pressure: 679 bar .. 721 bar, nominal: 700 bar, maximum: 735 bar, proof-runs: 5, rest: 40 s }
            parts:
              ring: { name: ring, number: M-1, price: 6.00 EUR, renew: always, ways-off: [ { minutes: 1 } ] }
              other-ring: { name: other ring, number: M-2, price: 3.00 EUR, renew: never, ways-off: [ { minutes: 1 } ] }
            kits:
              rings: { name: two rings, number: M-9, price: 4.00 EUR, contents: { ring: 1, other-ring: 1 } }
            """);
        var text = await Run.Of("parts", model, "--for", "ring");
        Assert.Equal(0, text.Exit);
        Assert.Contains("buy 1 × two rings, M-9, 4.00 EUR", text.Data, StringComparison.Ordinal);
        Assert.Contains("left over: 1 × other ring, bought in a kit and not needed here", text.Data, StringComparison.Ordinal);
        var json = (await Run.Of("parts", model, "--for", "ring", "--json")).Json;
        Assert.Equal("other-ring", (string?)Assert.Single(json["leftOver"]!.AsArray())!["part"]);
        Assert.Equal("EUR", (string?)json["currency"]);
    }
}
