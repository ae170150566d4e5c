using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;
using static Ramwright.Planning.Tests.Models;

namespace Ramwright.Planning.Tests.Strip;

/// <summary>The worked example of docs/service-model.md, added up there line by line, read from that page.</summary>
public sealed class PricedByHand
{
    private const string Head = """
        format: ramwright/1
        tool: { id: invented, name: Invented, kind: compression }
        limits: { pressure: 679 bar .. 721 bar, maximum: 735 bar, proof-runs: 12 }

        """;

    private static ServiceModel Model
    {
        get
        {
            var page = File.ReadAllText(Path.Combine(Repository.Folder("docs"), "service-model.md"));
            var from = page.IndexOf("```yaml\n", page.IndexOf("## How a plan is priced", StringComparison.Ordinal), StringComparison.Ordinal) + "```yaml\n".Length;
            return Assert.IsType<ModelReading.Read>(ModelReader.Read("example", Head + page[from..page.IndexOf("```", from, StringComparison.Ordinal)])).Model;
        }
    }

    private static StripPlan Plan(ServiceModel model, string targets) =>
        Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(new StripJob { Model = model, Rates = Models.Rates, Targets = Ids(targets) })).Plan;

    [Fact]
    public void The_hook_wrench_is_cheaper_and_costs_what_the_table_says()
    {
        var plan = Plan(Model, "cap");
        Assert.Equal((7.85m, 17.5m, 0m), (plan.CostParts.Labour.Amount, plan.CostParts.Renewals.Amount, plan.CostParts.Risk.Amount));
        Assert.Equal(25.35m, plan.Cost.Amount);
        Assert.Equal(7.85, plan.LikelyTime.TotalMinutes, tolerance: 1e-9);
        Assert.Equal(
            "battery-removed 0.3; cover 3.25 gasket filter; cap 4.3 wiper",
            string.Join("; ", plan.Steps.Select(s => FormattableString.Invariant($"{s.Node} {(s.Time + s.ChangeTime).TotalMinutes} {string.Join(' ', s.Renewals.Select(r => r.Part))}").Trim())));
    }

    [Fact]
    public void The_press_costs_what_the_table_says_where_it_is_the_only_way()
    {
        var model = Model;
        var pressOnly = model with { Parts = [.. model.Parts.Select(p => p.Id == Id("cap") ? p with { WaysOff = p.WaysOff[1..] } : p)] };
        var plan = Plan(pressOnly, "cap");
        Assert.Equal((13.05m, 10.5m, 2.4m), (plan.CostParts.Labour.Amount, plan.CostParts.Renewals.Amount, plan.CostParts.Risk.Amount));
        Assert.Equal(25.95m, plan.Cost.Amount);
    }

    [Fact]
    public void A_part_always_renewed_is_renewed_once_when_it_is_laid_open_and_comes_off()
    {
        var plan = Plan(Model, "filter");
        Assert.Equal((RenewalCause.Rule, Id("cover")), Assert.Single(plan.Renewals, r => r.Part == Id("filter")) is var r ? (r.Cause, r.By!.Value) : default);
        Assert.Equal(10.5m, plan.CostParts.Renewals.Amount);
    }

    [Fact]
    public void A_part_that_lies_outside_is_not_laid_open_by_making_the_tool_safe()
    {
        var model = Of(
            [State("battery-removed", 0.3, isolates: true)],
            Part("nut", Way(1)) with { Renew = RenewalRule.Always, Price = new Money(3m, "EUR") },
            Part("cover", Way(1)));
        Assert.Empty(Plan(model, "cover").Renewals);
        Assert.Single(Plan(model, "nut").Renewals);
    }
}
