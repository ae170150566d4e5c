using System.Globalization;
using CsCheck;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Hydraulics.Tests.Strokes;

namespace Ramwright.Bench.Stroke;

/// <summary>Thousands of made-up tools, drawn as the tests draw them, each at the usual tolerance and at a hundredth of it: an event that only one run shows was missed.</summary>
internal static class MissedEvents
{
    private const double FineTolerance = 1e-6;

    public static void Run(int count, string models)
    {
        var draw = MadeUpTools.Like(StrokeSpeed.Read(models, "corrie-85"));
        var chance = new PCG(101, 12_345);
        int missed = 0, limited = 0;
        var steps = new List<int>();
        var (off, peaks) = (new List<double>(), new List<double>());
        for (var i = 0; i < count; i++)
        {
            var seed = chance.ToString();
            var tool = draw.Generate(chance, null, out _);
            var (coarse, fine) = (StrokeSimulator.Run(tool.Parameters, tool.Plan), StrokeSimulator.Run(tool.Parameters, tool.Plan, FineTolerance));
            limited += coarse.End == StrokeEnd.LimitReached || fine.End == StrokeEnd.LimitReached ? 1 : 0;
            steps.Add(coarse.Steps);
            if (coarse.End != fine.End || !MadeUpTools.Named(coarse).SequenceEqual(MadeUpTools.Named(fine)))
            {
                missed++;
                Console.WriteLine($"{i}, seed {seed}: {coarse.End}, {string.Join(' ', MadeUpTools.Named(coarse))}\n   finer: {fine.End}, {string.Join(' ', MadeUpTools.Named(fine))}");
                continue;
            }

            if (fine.First(StrokeEventKind.ReliefOpened) is { } opened)
                off.Add(Math.Abs(coarse.First(StrokeEventKind.ReliefOpened)!.Seconds - opened.Seconds));
            peaks.Add(Math.Abs(coarse.PeakPascals / Math.Max(fine.PeakPascals, 1e5) - 1));
        }

        off.Sort();
        steps.Sort();
        peaks.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{count} tools: {missed} with other events, {limited} at a limit; steps {steps[count / 2]} at the median, {steps[count * 99 / 100]} at 99 %, {steps[^1]} at most; opening off by {1000 * off[off.Count / 2]:0.000} ms at the median, {1000 * off[off.Count * 99 / 100]:0.000} ms at 99 %, {1000 * off[^1]:0.000} ms at most; peak off by {100 * peaks[peaks.Count * 99 / 100]:0.000} % at 99 %, {100 * peaks[^1]:0.000} % at most"));
    }
}
