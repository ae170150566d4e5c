using System.Collections.Immutable;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests;

/// <summary>Whatever is taken off a demo tool goes back: each part alone, sets of two to six at random, the whole tool.</summary>
public sealed class ThereAndBack
{
    private const int RandomSets = 100;

    public static TheoryData<string> Tools => ["corrie-85", "corrie-120", "skerry-52"];

    [Theory]
    [MemberData(nameof(Tools))]
    public void Every_part_alone(string tool) => Check(tool, DemoModels.Removable(tool).Select(p => new[] { p }));

    [Theory]
    [MemberData(nameof(Tools))]
    public void Sets_of_parts_at_random(string tool)
    {
        var (parts, random) = (DemoModels.Removable(tool), new Random(52));
        Check(tool, Enumerable.Range(0, RandomSets).Select(_ => random.GetItems(parts, random.Next(2, 7)).Distinct().ToArray()));
    }

    [Theory]
    [MemberData(nameof(Tools))]
    public void The_whole_tool(string tool) => Check(tool, [DemoModels.Removable(tool)]);

    /// <summary>A technician may be called away at any step: what is off by then goes back too.</summary>
    [Theory]
    [MemberData(nameof(Tools))]
    public void From_any_step_on_the_way(string tool)
    {
        var model = DemoModels.Read(tool);
        var job = DemoModels.Job(model, DemoModels.Removable(tool));
        var whole = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(job)).Plan;
        for (var steps = 1; steps <= whole.Steps.Length; steps++)
            CheckRebuild(model, whole.Steps[..steps], $"{tool}, after {steps} steps");
    }

    private static void Check(string tool, IEnumerable<NodeId[]> sets)
    {
        var model = DemoModels.Read(tool);
        foreach (var targets in sets)
        {
            var name = $"{tool}: {string.Join(' ', targets)}";
            var plan = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(DemoModels.Job(model, targets))).Plan;
            Assert.True(plan.ProvenOptimal || plan.Gap.Amount > 0, name);
            Assert.True(targets.All(t => plan.Steps.Any(s => s.Node == t)), name);
            Assert.True(plan.Steps.Select(s => s.Node).Distinct().Count() == plan.Steps.Length, name);
            CheckNeeds(model, plan, name);
            CheckRenewals(model, plan, name);
            CheckRebuild(model, plan.Steps, name);
        }
    }

    private static void CheckNeeds(ServiceModel model, StripPlan plan, string name)
    {
        var done = new HashSet<NodeId>();
        foreach (var step in plan.Steps)
        {
            Assert.True(NeedsOf(model, step).All(done.Contains), $"{name}: {step.Node} comes too early");
            done.Add(step.Node);
        }
    }

    /// <summary>Straight from the model: what came off or was disturbed and has a rule for it, what did not survive.</summary>
    private static void CheckRenewals(ServiceModel model, StripPlan plan, string name)
    {
        var ways = plan.Steps.Where(s => s.Way is not null).Select(s => (s.Node, Way: model.FindPart(s.Node)!.WaysOff[s.Way!.Value])).ToList();
        var touched = ways.SelectMany(w => w.Way.Disturbs.Append(w.Node));
        var due = touched.Where(p => model.FindPart(p)!.Renew is RenewalRule.WhenDisturbed or RenewalRule.Always)
            .Concat(ways.SelectMany(w => w.Way.Destroys)).ToHashSet();
        var renewed = plan.Renewals.Select(r => r.Part).ToList();
        Assert.True(due.IsSubsetOf(renewed), $"{name}: not renewed: {string.Join(' ', due.Except(renewed))}");
        Assert.All(renewed.Except(due), p => Assert.True(model.FindPart(p)!.Renew is RenewalRule.Always, $"{name}: {p} renewed without a reason"));
    }

    private static void CheckRebuild(ServiceModel model, ImmutableArray<StripStep> strip, string name)
    {
        var job = DemoModels.Back(model, strip);
        var answer = RebuildPlanner.Plan(job);
        var steps = Assert.IsType<RebuildAnswer.Planned>(answer).Plan.Steps;
        var fitted = steps.Where(s => s.Kind is RebuildKind.FitPart or RebuildKind.MakeUpUnit).ToList();
        foreach (var part in strip.Where(s => s.Way is not null).Select(s => s.Node).Union(job.Renewals.Select(r => r.Part)))
        {
            var step = Assert.Single(fitted, s => s.Node == part);
            Assert.True(step.NewParts.Contains(part) == job.Renewals.Any(r => r.Part == part), $"{name}: {part} new or not");
        }

        var undone = strip.Where(s => s.Way is null && model.FindState(s.Node)!.Undo is not null).Select(s => s.Node);
        Assert.All(undone, state => Assert.Single(steps, s => s.Node == state));
        var order = fitted.Select(s => s.Node!.Value).ToList();
        foreach (var (part, at) in order.Select((p, i) => (p, i)))
        {
            var late = (model.FindPart(part)!.Fit?.After ?? []).Where(a => order.IndexOf(a) > at);
            Assert.True(!late.Any(), $"{name}: {part} goes in before {string.Join(' ', late)}");
        }
    }

    private static ImmutableArray<NodeId> NeedsOf(ServiceModel model, StripStep step) =>
        step.Way is { } way ? model.FindPart(step.Node)!.WaysOff[way].Needs : model.FindState(step.Node)!.Reach!.Needs;
}
