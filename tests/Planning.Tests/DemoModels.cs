using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests;

/// <summary>The models of the demo shop, and jobs on them at an invented rate.</summary>
internal static class DemoModels
{
    private static readonly Rates Rates = new() { LabourPerHour = new Money(72m, "EUR") };

    public static ServiceModel Read(string id) =>
        Assert.IsType<ModelReading.Read>(ModelReader.ReadFile(Path.Combine(Repository.Folder("models"), id + ".yaml"))).Model;

    public static NodeId[] Removable(string id) => [.. Read(id).Parts.Where(p => !p.WaysOff.IsEmpty).Select(p => p.Id)];

    public static StripJob Job(ServiceModel model, params NodeId[] targets) => new() { Model = model, Rates = Rates, Targets = [.. targets] };

    public static StripPlan Plan(ServiceModel model, params NodeId[] targets) =>
        Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(Job(model, targets))).Plan;

    /// <summary>The way back once these steps are done.</summary>
    public static RebuildJob Back(ServiceModel model, ImmutableArray<StripStep> strip) => new()
    {
        Model = model,
        Rates = Rates,
        Done = [.. strip.Select(s => s.Node)],
        Renewals = [.. strip.SelectMany(s => s.Renewals)],
        WaysUsed = strip.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value),
    };

    public static RebuildPlan Rebuild(ServiceModel model, StripPlan plan) =>
        Assert.IsType<RebuildAnswer.Planned>(RebuildPlanner.Plan(Back(model, plan.Steps))).Plan;
}
