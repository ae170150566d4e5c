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
        _ = new StripPlansCircuitPeer(StripPlansModels.Job(6, 3, 1, seed: 1)).Solve(PeerSeconds);
        Demo(shelf);
        Grown();
        Spread();
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
        Console.WriteLine("| model | target | steps | ours, median ms | circuit, ms | batches, ms | ratio to the better | states |");
        Console.WriteLine("|---|---|---:|---:|---:|---:|---:|---:|");
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
        Console.WriteLine("| parts | targets | steps | ours, median ms | circuit, ms | batches, ms | ratio to the better | states |");
        Console.WriteLine("|---:|---|---:|---:|---:|---:|---:|---:|");
        foreach (var parts in new[] { 20, 40, 60, 80, 100, 120 })
        {
            foreach (var targets in new[] { 1, 3, 6 })
                Compare(parts.ToString(CultureInfo.InvariantCulture), targets.ToString(CultureInfo.InvariantCulture), StripPlansModels.Job(parts, 6, targets, seed: parts));
        }
    }

    /// <summary>Forty tools of each size, each planned once: how far the hard ones lie from the middle.</summary>
    private static void Spread()
    {
        const int Tools = 40;
        Console.WriteLine();
        Console.WriteLine("| parts | targets | median ms | 9 in 10, ms | worst ms | proven | largest gap |");
        Console.WriteLine("|---:|---:|---:|---:|---:|---:|---:|");
        foreach (var parts in new[] { 60, 120 })
        {
            foreach (var targets in new[] { 1, 3, 6 })
            {
                var runs = Enumerable.Range(1, Tools).Select(tool => Median(StripPlansModels.Job(parts, 6, targets, seed: 1_000 * tool), runs: 1)).ToList();
                var times = runs.Select(r => r.Milliseconds).Order().ToList();
                var gap = runs.Max(r => r.Plan.Gap.Amount / r.Plan.Cost.Amount);
                Console.WriteLine(Row($"| {parts} | {targets} | {times[Tools / 2]:0.0} | {times[Tools * 9 / 10]:0.0} | {times[^1]:0.0} | {runs.Count(r => r.Plan.ProvenOptimal)} of {Tools} | {100 * gap:0.0} % |"));
            }
        }
    }

    private static StripJob Job(ServiceModel model, params NodeId[] targets) => new() { Model = model, Rates = StripPlansModels.Rates, Targets = [.. targets] };

    private static StripJob Whole(ServiceModel model) => Job(model, [.. model.Parts.Where(p => p.WaysOff is not []).Select(p => p.Id)]);

    private static int StepsTo(ServiceModel model, NodeId target) => StripPlanner.Plan(Job(model, target)) is StripAnswer.Planned p ? p.Plan.Steps.Length : 0;

    private static void Compare(string name, string target, StripJob job)
    {
        WarmUp(job);
        var (ours, plan) = Median(job, runs: 21);
        var circuit = Peer(new StripPlansCircuitPeer(job), plan);
        var batches = Peer(new StripPlansBatchPeer(job, plan.Steps.Count(s => s.ChangeTime > TimeSpan.Zero) + 3), plan);
        var open = !circuit.Proven && !batches.Proven;
        var best = open ? 1_000 * PeerSeconds : Math.Min(circuit.Proven ? circuit.Milliseconds : double.MaxValue, batches.Proven ? batches.Milliseconds : double.MaxValue);
        var proven = plan.ProvenOptimal ? "" : Row($", gap {plan.Gap.Amount:0.00}");
        Console.WriteLine(Row($"| {name} | {target} | {plan.Steps.Length} | {ours:0.00}{proven} | {circuit.Words} | {batches.Words} | {(open ? "> " : "")}{best / ours:0} | {plan.StatesSearched} |"));
    }

    /// <summary>Model build and solving; where the peer stops early, how far it came.</summary>
    private static (double Milliseconds, bool Proven, string Words) Peer(StripPlansPeer peer, StripPlan plan)
    {
        var clock = Stopwatch.StartNew();
        var (cost, proven) = peer.Solve(PeerSeconds);
        var milliseconds = clock.Elapsed.TotalMilliseconds;
        if (proven && plan.ProvenOptimal && Math.Abs(plan.Cost.Amount - cost) >= 0.001m)
            throw new InvalidOperationException(Row($"The peer's optimum is {cost:0.0000}, ours {plan.Cost.Amount:0.0000}."));
        var dearer = cost == 0 ? "nothing found" : plan.Cost.Amount == 0 ? "" : Row($"{100 * (cost / plan.Cost.Amount - 1):0.0} % dearer");
        return (milliseconds, proven, proven ? Row($"{milliseconds:0}") : Row($"stopped, {dearer}"));
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
