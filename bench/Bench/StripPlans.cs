using System.Diagnostics;
using System.Globalization;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Bench;

/// <summary>Plans on the demo models and on grown ones, against OR-Tools CP-SAT with one thread, its model build included.</summary>
internal static class StripPlans
{
    private const double PeerSeconds = 10;

    /// <summary>Before timing: what every program that plans more than once has behind it.</summary>
    private const double WarmUpMilliseconds = 1_000;

    public static void Run(string modelsFolder)
    {
        var shelf = new ModelShelf(modelsFolder);
        First(shelf);
        StripPlansPeer.Solve(StripPlansModels.Job(6, 3, 1, seed: 1), PeerSeconds);
        Demo(shelf);
        Grown();
    }

    /// <summary>The first plan of a fresh process: most of it is compiling.</summary>
    private static void First(ModelShelf shelf)
    {
        if (shelf.Read("corrie-85") is not ModelReading.Read { Model: var model })
            return;
        var clock = Stopwatch.StartNew();
        _ = StripPlanner.Plan(Whole(model));
        Console.WriteLine(Row($"First plan of the process, whole corrie-85: {clock.Elapsed.TotalMilliseconds:0} ms"));
        Console.WriteLine();
    }

    private static void Demo(ModelShelf shelf)
    {
        Console.WriteLine("| model | target | steps | ours, median ms | CP-SAT, ms | ratio | states | same cost |");
        Console.WriteLine("|---|---|---:|---:|---:|---:|---:|---|");
        foreach (var id in shelf.Ids())
        {
            if (shelf.Read(id) is not ModelReading.Read { Model: var model })
                throw new InvalidOperationException($"{id} does not read.");
            WarmUp(Whole(model));
            var medians = new List<double>();
            foreach (var target in model.Parts.Where(p => p.WaysOff is not []).Select(p => p.Id))
                medians.Add(Median(Job(model, target), runs: 11).Milliseconds);
            Console.WriteLine(Row($"| {id} | each of {medians.Count} parts alone, median (worst) | | {Middle(medians):0.00} ({medians.Max():0.00}) | | | | |"));
            foreach (var target in model.Parts.Where(p => p.WaysOff is not []).OrderByDescending(p => StepsTo(model, p.Id)).Take(3).Select(p => p.Id))
                Compare(id, target.Value, Job(model, target));
            Compare(id, "every part", Whole(model));
        }
    }

    private static void Grown()
    {
        Console.WriteLine();
        Console.WriteLine("| parts | targets | steps | ours, median ms | CP-SAT, ms | ratio | states | same cost |");
        Console.WriteLine("|---:|---|---:|---:|---:|---:|---:|---|");
        foreach (var parts in new[] { 20, 40, 60, 80, 100, 120 })
        {
            foreach (var targets in new[] { 1, 3, 6 })
                Compare(parts.ToString(CultureInfo.InvariantCulture), targets.ToString(CultureInfo.InvariantCulture), StripPlansModels.Job(parts, 6, targets, seed: parts));
        }
    }

    private static StripJob Job(ServiceModel model, params NodeId[] targets) => new() { Model = model, Rates = StripPlansModels.Rates, Targets = [.. targets] };

    private static StripJob Whole(ServiceModel model) => Job(model, [.. model.Parts.Where(p => p.WaysOff is not []).Select(p => p.Id)]);

    private static int StepsTo(ServiceModel model, NodeId target) => StripPlanner.Plan(Job(model, target)) is StripAnswer.Planned p ? p.Plan.Steps.Length : 0;

    private static void Compare(string name, string target, StripJob job)
    {
        WarmUp(job);
        var (ours, plan) = Median(job, runs: 21);
        var clock = Stopwatch.StartNew();
        var (cost, proven) = StripPlansPeer.Solve(job, PeerSeconds);
        var peer = clock.Elapsed.TotalMilliseconds;
        var same = plan.ProvenOptimal && proven
            ? Math.Abs(plan.Cost.Amount - cost) < 0.001m ? "yes" : Row($"NO: {plan.Cost.Amount:0.0000} against {cost:0.0000}")
            : Row($"ours {plan.Cost.Amount:0.00}{(plan.ProvenOptimal ? "" : Row($", gap {plan.Gap.Amount:0.00}"))}; peer {(cost == 0 ? "found none" : Row($"{cost:0.00}{(proven ? "" : " not proven")}"))}");
        Console.WriteLine(Row($"| {name} | {target} | {plan.Steps.Length} | {ours:0.00} | {(proven ? "" : "> ")}{peer:0} | {(proven ? "" : "> ")}{peer / ours:0} | {plan.StatesSearched} | {same} |"));
    }

    private static void WarmUp(StripJob job)
    {
        for (var clock = Stopwatch.StartNew(); clock.Elapsed.TotalMilliseconds < WarmUpMilliseconds;)
            _ = StripPlanner.Plan(job);
    }

    private static (double Milliseconds, StripPlan Plan) Median(StripJob job, int runs)
    {
        var times = new List<double>();
        StripPlan? plan = null;
        for (var run = 0; run < runs && times.Sum() < 10_000; run++)
        {
            var clock = Stopwatch.StartNew();
            plan = StripPlanner.Plan(job) is StripAnswer.Planned planned ? planned.Plan : throw new InvalidOperationException("No way.");
            times.Add(clock.Elapsed.TotalMilliseconds);
        }

        return (Middle(times), plan!);
    }

    private static double Middle(List<double> times) => times.Order().ElementAt(times.Count / 2);

    private static string Row(FormattableString text) => FormattableString.Invariant(text);
}
