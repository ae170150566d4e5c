using System.Collections.Immutable;
using Ramwright.Planning.Map;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests;

/// <summary>Every part of every bundled model: stripped, drawn, rebuilt.</summary>
public sealed class DemoModelPlans
{
    public static TheoryData<string> Models => [.. new ModelShelf(Repository.Folder("models")).Ids()];

    private static ServiceModel Read(string id) =>
        Assert.IsType<ModelReading.Read>(new ModelShelf(Repository.Folder("models")).Read(id)).Model;

    private static StripPlan Plan(ServiceModel model, params NodeId[] targets) =>
        Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(new StripJob { Model = model, Rates = Tests.Models.Rates, Targets = [.. targets] })).Plan;

    private static NodeId[] Removable(ServiceModel model) => [.. model.Parts.Where(p => p.WaysOff is not []).Select(p => p.Id)];

    [Theory]
    [MemberData(nameof(Models))]
    public void Every_part_has_a_proven_plan_in_which_nothing_comes_before_what_it_needs(string id)
    {
        var model = Read(id);
        foreach (var part in Removable(model))
        {
            var plan = Plan(model, part);
            Assert.True(plan.ProvenOptimal);
            Assert.InRange(plan.StatesSearched, 0, 20_000);
            var done = model.States.Where(s => s.Reach is null).Select(s => s.Id).ToHashSet();
            foreach (var step in plan.Steps)
            {
                var needs = step.Way is { } way ? model.FindPart(step.Node)!.WaysOff[way].Needs : model.FindState(step.Node)!.Reach!.Needs;
                Assert.Subset(done, needs.ToHashSet());
                Assert.True(done.Add(step.Node));
            }

            Assert.Equal(part, plan.Steps[^1].Node);
        }
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void No_part_comes_off_before_the_tool_is_safe(string id)
    {
        var model = Read(id);
        var isolating = model.States.Where(s => s.Isolates).Select(s => s.Id).ToHashSet();
        Assert.NotEmpty(isolating);
        foreach (var part in Removable(model))
        {
            var before = Plan(model, part).Steps.TakeWhile(s => s.Way is null).Select(s => s.Node).ToHashSet();
            Assert.Subset(before, isolating);
        }
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void The_whole_tool_comes_apart_and_goes_together_again(string id)
    {
        var model = Read(id);
        var strip = Plan(model, Removable(model));
        Assert.True(strip.ProvenOptimal);
        ImmutableHashSet<NodeId> done = [.. strip.Steps.Select(s => s.Node)];
        var answer = RebuildPlanner.Plan(new RebuildJob
        {
            Model = model,
            Rates = Tests.Models.Rates,
            Done = done,
            Renewals = strip.Renewals,
            WaysUsed = strip.Steps.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value),
        });
        var rebuild = Assert.IsType<RebuildAnswer.Planned>(answer).Plan;
        var back = rebuild.Steps.SelectMany(s => s.Parts).ToHashSet();
        Assert.Superset(done.Where(n => model.FindPart(n) is not null).ToHashSet(), back);
        foreach (var renewal in strip.Renewals)
            Assert.Contains(rebuild.Steps, s => s.NewParts.Contains(renewal.Part));
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void The_map_shows_every_part_and_names_every_step(string id)
    {
        var model = Read(id);
        var plan = Plan(model, Removable(model));
        var map = StripMap.Layout(model, plan);
        Assert.Equal(model.Parts.Length, map.Parts.Length);
        Assert.Equal(plan.Steps.Count(s => s.Way is not null), map.Balloons.Length);
        Assert.All(map.Parts, p => Assert.NotEmpty(p.Shapes));
    }
}
