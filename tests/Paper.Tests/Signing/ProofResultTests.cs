using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Signing;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The result as programs read it, held against its documented schema by JsonSchema.Net, which is no part of this program.</summary>
public sealed class ProofResultTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Root(), "docs", "reference", "proof-result.schema.json")));

    public static TheoryData<string> Reports => ["full", "bare", "corrected"];

    [Theory]
    [MemberData(nameof(Reports))]
    public void Has_the_documented_form(string name)
    {
        var input = name switch
        {
            "full" => Proofs.Report,
            "corrected" => Proofs.Report with { Replaces = "SM-0409-P0", Runs = [.. Proofs.Report.Runs.Select(r => r with { At = House.Noon })] },
            _ => Proofs.Report with
            {
                AsFound = [],
                Reference = null,
                OutputForce = null,
                Risk = null,
                Device = new() { Kind = "port gauge", Id = "PG-1" },
                Job = House.Job with { Serial = null, CustomerReference = null },
                ModelFingerprint = null,
                Runs = [],
                Verdict = Proofs.Conforms with { Conformity = Ramwright.Proving.Conformity.Undecided, Runs = 0, Mean = null, StandardDeviation = null, Claims = [], OneSidedFactor = null },
            },
        };
        var result = SignedReport.Of(input, PaperSize.A4, UnitSystem.Metric, Signed.Key).Result;
        var answer = Schema.Evaluate(JsonDocument.Parse(result).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(answer.IsValid, string.Join('\n', (answer.Details ?? []).Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation} {string.Join(", ", d.Errors!.Values)}")));
    }

    [Fact]
    public void A_result_with_a_member_too_many_has_not()
    {
        var json = JsonNode.Parse(Signed.Report.Result)!.AsObject();
        json["price"] = 12;
        Assert.False(Schema.Evaluate(JsonDocument.Parse(json.ToJsonString()).RootElement).IsValid);
    }

    private static string Root()
    {
        var at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "Ramwright.slnx")))
            at = Path.GetDirectoryName(at)!;
        return at;
    }
}
