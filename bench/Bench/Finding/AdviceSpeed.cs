using System.Diagnostics;
using System.Globalization;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.ServiceModels;

namespace Ramwright.Bench.Finding;

/// <summary>The next act on the demo models for typical complaints: time, states, and how far from proven.</summary>
internal static class AdviceSpeed
{
    private static readonly (string Model, string Complaint)[] Complaints =
    [
        ("corrie-85", "pressure-decays"), ("corrie-85", "slow"), ("corrie-85", "slow slow-under-load"), ("corrie-85", "stops-low"), ("corrie-85", "dead"), ("corrie-85", "no-return jerky"),
        ("corrie-85", "short-stroke"), ("corrie-85", "pack-drains"), ("corrie-85", "slow pressure-decays stops-low oil-at-rod rattles"),
        ("skerry-52", "torn-cut"), ("skerry-52", "slow-under-load"), ("skerry-52", "no-pressure"),
    ];

    public static void Run(string folder)
    {
        Console.WriteLine("| model | complaint | posterior, ms | next act, ms | processor time, ms | states | expected cost, EUR | not proven, EUR |");
        Console.WriteLine("|---|---|---:|---:|---:|---:|---:|---:|");
        var networks = Complaints.Select(c => c.Model).Distinct(StringComparer.Ordinal).ToDictionary(id => id, id => FaultNetwork.Of(ModelReader.ReadFile(Path.Combine(folder, id + ".yaml")) is ModelReading.Read { Model: var read } ? read : throw new InvalidOperationException("The model does not read.")), StringComparer.Ordinal);
        var options = new ActionOptions { Rates = new Rates { LabourPerHour = new Money(66, "EUR") } };
        foreach (var (model, complaint) in Complaints.Prepend(Complaints[0]).Prepend(Complaints[1])) // the first two warm up
        {
            var evidence = new Evidence { Seen = [.. complaint.Split(' ').Select(s => new ServiceModels.Model.SymptomId(s))] };
            var (weighing, advising) = (Median(() => FaultFinder.Weigh(networks[model], evidence)), Median(() => NextAction.Advise(networks[model], evidence, options)));
            var advice = ((ActionAnswer.Advised)NextAction.Advise(networks[model], evidence, options)).Advice;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {model} | {complaint} | {weighing.Wall:0.0} | {advising.Wall:0} | {advising.Work:0} | {advice.StatesSearched} | {advice.ExpectedCost.Amount:0} | {advice.Gap.Amount:0} |"));
        }
    }

    private static (double Wall, double Work) Median(Action act)
    {
        var (walls, works) = (new double[7], new double[7]);
        for (var i = 0; i < walls.Length; i++)
        {
            var (clock, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
            act();
            (walls[i], works[i]) = (clock.Elapsed.TotalMilliseconds, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
        }

        return (walls.Order().ElementAt(3), works.Order().ElementAt(3));
    }
}
