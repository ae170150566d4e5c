using System.Globalization;
using Ramwright.Setting;

namespace Ramwright.Bench;

/// <summary>Plays thousands of made-up tools through each rule and counts turns, runs, ends and what went past the maximum.</summary>
internal static class SettingSimulation
{
    private const int MostSteps = 300;

    private static readonly SettingJobs Wide = new("±5 %, maximum +8 %", 0.05, 0.08), Narrow = new("±3 %, maximum +5 %", 0.03, 0.05);

    private static readonly SettingJobs[] Rarer =
    [
        Wide with { Name = "±5 %, limits alone", Data = false },
        Narrow with { Name = "±3 %, limits alone", Data = false },
        Wide with { Name = "±5 %, screw without effect", Fault = SettingFault.Dead, FoundHigh = 0 },
        Wide with { Name = "±5 %, something stops below", Fault = SettingFault.StopsBelow, FoundHigh = 0 },
    ];

    /// <summary>So many tools of each kind through each rule: those with relief data, or the rarer kinds, without or with a fault.</summary>
    public static void Run(int count, bool rarer)
    {
        Console.WriteLine("| tools | number | rule | turns, median | 95 % within | first inside, median | 95 % within | runs, mean | past maximum | said in | said in and wrong | inside at the end | to Find | scatter | other |");
        Console.WriteLine("|---|---:|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|");
        foreach (var jobs in rarer ? Rarer : [Wide, Narrow])
        {
            foreach (var (name, rule) in SettingRules.All.Take(jobs.Fault == SettingFault.None ? SettingRules.All.Length : 1))
            {
                Job[] played = [.. Enumerable.Range(0, count).Select(seed => Play(jobs, rule, seed))];
                Console.WriteLine(Row(jobs.Name, name, played));
                if (jobs == Narrow)
                    Console.WriteLine(Row("of these, scatter up to 1 %", name, [.. played.Where(j => j.Scatter <= 0.01)]));
            }
        }
    }

    /// <summary>Processor milliseconds of one advice after so many runs: the median and the worst of some histories, each the best of three.</summary>
    public static void Time()
    {
        Console.WriteLine("| runs so far | advice, median ms | worst ms |");
        Console.WriteLine("|---:|---:|---:|");
        for (var runs = 0; runs <= 12; runs++) // the first line warms up and is not shown
        {
            var took = Enumerable.Range(0, 40).Select(seed => Milliseconds(Narrow, seed, runs == 0 ? 3 : runs)).Order().ToList();
            if (runs > 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {runs} | {took[took.Count / 2]:0.0} | {took[^1]:0.0} |"));
        }
    }

    private static double Milliseconds(SettingJobs jobs, int seed, int runs)
    {
        var tool = new SettingTool(jobs, seed);
        var history = new List<SettingRun>();
        for (var run = 0; run < runs; run++)
        {
            if (run % 3 != 2)
                tool.Turn(0.5 * (SettingJobs.Nominal - tool.Mean) / tool.ComputedGain);
            history.Add(tool.Run());
        }

        return Enumerable.Range(0, 3).Min(_ =>
        {
            var before = Environment.CpuUsage.TotalTime;
            SettingAdvisor.Advise(jobs.Limits, tool.Relief, history);
            return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
        });
    }

    private static Job Play(SettingJobs jobs, Func<SettingJobs, SettingTool, List<SettingRun>, RuleSays> rule, int seed)
    {
        var tool = new SettingTool(jobs, seed);
        double low = jobs.Limits.Pressure.Min.Bar, high = jobs.Limits.Pressure.Max.Bar, maximum = jobs.Limits.Maximum.Bar;
        var runs = new List<SettingRun>();
        int turns = 0, first = tool.Mean >= low && tool.Mean <= high ? 0 : int.MaxValue;
        var past = false;
        for (var step = 0; step < MostSteps; step++)
        {
            runs.Add(tool.Run());
            var says = rule(jobs, tool, runs);
            if (says.End is { } end)
                return new(tool.ScatterShare, turns, first, runs.Count, past, tool.Mean >= low && tool.Mean <= high, end);
            if (says.Turns == 0)
                continue;
            var before = tool.Mean;
            tool.Turn(says.Turns);
            turns++;
            past |= tool.Mean > maximum && tool.Mean > before;
            if (first == int.MaxValue && tool.Mean >= low && tool.Mean <= high)
                first = turns;
        }

        return new(tool.ScatterShare, turns, first, runs.Count, past, tool.Mean >= low && tool.Mean <= high, null);
    }

    private static string Row(string tools, string rule, Job[] played)
    {
        var ended = Sorted(played.Select(j => j.Inside ? j.Turns : int.MaxValue));
        var first = Sorted(played.Select(j => j.First));
        double Share(Func<Job, bool> of) => 100.0 * played.Count(of) / played.Length;
        var others = Share(j => j.End is not (SettingOutcome.In or SettingOutcome.GoToFind or SettingOutcome.ScatterTooLarge));
        return string.Create(CultureInfo.InvariantCulture,
            $"| {tools} | {played.Length} | {rule} | {At(ended, 0.5)} | {At(ended, 0.95)} | {At(first, 0.5)} | {At(first, 0.95)} | {played.Average(j => j.Runs):0.0} | {played.Count(j => j.Past)} | {Share(j => j.End == SettingOutcome.In):0.0} % | {Share(j => j.End == SettingOutcome.In && !j.Inside):0.00} % | {Share(j => j.Inside):0.0} % | {Share(j => j.End == SettingOutcome.GoToFind):0.00} % | {Share(j => j.End == SettingOutcome.ScatterTooLarge):0.0} % | {others:0.00} % |");
    }

    private static int[] Sorted(IEnumerable<int> values) => [.. values.Order()];

    private static string At(int[] sorted, double share)
    {
        var value = sorted[(int)Math.Ceiling(share * sorted.Length) - 1];
        return value == int.MaxValue ? "never" : value.ToString(CultureInfo.InvariantCulture);
    }

    private readonly record struct Job(double Scatter, int Turns, int First, int Runs, bool Past, bool Inside, SettingOutcome? End);
}
