using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels;

namespace Ramwright.Bench.Stroke;

/// <summary>One full stroke of the Corrie 85 by Ramwright, by CVODE in C and by SciPy, each over a row of tolerances; compared where the event times are off by the same at most.</summary>
internal static class StrokeSpeed
{
    private const double AskedSeconds = 1e-6, ReferenceTolerance = 1e-11;
    private const int Blocks = 9, Strokes = 40;

    private static readonly ImmutableArray<StrokeEventKind> Kinds =
        [StrokeEventKind.RamMoves, StrokeEventKind.DiesClosed, StrokeEventKind.ReliefOpened, StrokeEventKind.DiesParted, StrokeEventKind.ReliefClosed, StrokeEventKind.RamHome];

    /// <summary>Prints the table, and draws the plot into <paramref name="plot"/> where a file is named.</summary>
    public static void Run(string models, string python, string? plot)
    {
        var tool = Read(models, "corrie-85");
        var folder = Directory.CreateTempSubdirectory("ramwright-stroke");
        try
        {
            var parameters = Path.Combine(folder.FullName, "parameters.txt");
            File.WriteAllLines(parameters, PeerStroke.Parameters(tool, new StrokePlan()));
            var reference = Events(StrokeSimulator.Run(tool, new StrokePlan(), ReferenceTolerance));
            var cvode = PeerStroke.Compile(folder.FullName);

            // Ours first and last, the best of both: the machine is not equally busy all the time.
            var (before, steps) = (Ours(tool, reference), StrokeSimulator.Run(tool, new StrokePlan()).Steps);
            var rows = new List<WorkPrecision>();
            foreach (var order in new[] { "3", "4", "5" }) // high orders of BDF shun the ram's swinging on its oil: the peer has the choice
                rows.Add(PeerStroke.Read($"CVODE, order {order}", PeerStroke.Run(cvode, [parameters, "5", "20", order, .. Tolerances(-3, -11, 2).Select(Word)]), reference));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Reference at {ReferenceTolerance:0e-0}: CVODE at 1e-12 is off by {PeerStroke.Read("", PeerStroke.Run(cvode, [parameters, "1", "1", "5", "1e-12"]), reference).Points[0].OffSeconds:0.0e-0} s at most."));
            foreach (var method in new[] { "LSODA", "BDF", "Radau" })
                rows.Add(PeerStroke.Read($"SciPy {method}", PeerStroke.Run(python, [PeerStroke.Source("stroke.py"), parameters, "2", .. Tolerances(-4, -9, 2).Select(t => $"{method}:{Word(t)}")]), reference));
            rows.Insert(0, before.BestWith(Ours(tool, reference)));
            Print(rows, steps);
            if (plot is not null)
                File.WriteAllText(plot, WorkPrecisionPlot.Draw(rows, AskedSeconds));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>A bundled model's figures for the stroke.</summary>
    public static StrokeParameters Read(string models, string name) =>
        new ModelShelf(models).Read(name) is ModelReading.Read read && StrokeParametersReading.Of(read.Model) is StrokeParametersReading.Ready ready
            ? ready.Tool : throw new InvalidOperationException($"{name} has no stroke.");

    private static WorkPrecision Ours(StrokeParameters tool, ImmutableArray<double> reference)
    {
        var points = ImmutableArray.CreateBuilder<WorkPoint>();
        for (var i = 0; i < 400; i++)
            StrokeSimulator.Run(tool, new StrokePlan()); // compiled by now
        foreach (var tolerance in Tolerances(-3, -10, 3))
        {
            var stroke = StrokeSimulator.Run(tool, new StrokePlan(), tolerance);
            var best = double.PositiveInfinity;
            for (var block = 0; block < Blocks; block++)
            {
                var before = Environment.CpuUsage.TotalTime;
                for (var i = 0; i < Strokes; i++)
                    StrokeSimulator.Run(tool, new StrokePlan(), tolerance);
                best = Math.Min(best, (Environment.CpuUsage.TotalTime - before).TotalSeconds / Strokes);
            }

            points.Add(new(tolerance, best, stroke.Steps, stroke.StepsRefused, WorkPrecision.Off(Events(stroke), reference)));
        }

        return new("Ramwright", points.ToImmutable());
    }

    /// <summary>From ten to one power to ten to a lower one, so many in each decade.</summary>
    private static IEnumerable<double> Tolerances(int from, int to, int each) => Enumerable.Range(0, (from - to) * each + 1).Select(i => Math.Pow(10, from - (double)i / each));

    private static string Word(double tolerance) => tolerance.ToString("R", CultureInfo.InvariantCulture);

    private static ImmutableArray<double> Events(Hydraulics.Strokes.Stroke stroke) => [.. Kinds.Select(kind => stroke.First(kind)?.Seconds ?? double.NaN)];

    private static void Print(List<WorkPrecision> rows, int usualSteps)
    {
        foreach (var row in rows)
        {
            Console.WriteLine($"\n{row.Name}\n\n| tolerance | processor time, ms | steps | refused | worst event, s |\n|---:|---:|---:|---:|---:|");
            foreach (var point in row.Points)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {point.Tolerance:0.0e-0} | {1000 * point.Seconds:0.000} | {point.Steps} | {point.Refused} | {point.OffSeconds:0.0e-0} |"));
        }

        Console.WriteLine($"\nUsual tolerance: {usualSteps} steps. Equal error:\n\n| method | tolerance | worst event, s | steps | processor time, ms | times ours |\n|---|---:|---:|---:|---:|---:|");
        var ours = rows[0].At(AskedSeconds) ?? throw new InvalidOperationException("Ours does not come to the asked error.");
        foreach (var row in rows)
        {
            Console.WriteLine(row.At(AskedSeconds) is { } point
                ? string.Create(CultureInfo.InvariantCulture, $"| {row.Name} | {point.Tolerance:0.0e-0} | {point.OffSeconds:0.0e-0} | {point.Steps} | {1000 * point.Seconds:0.00} | {point.Seconds / ours.Seconds:0.00} |")
                : $"| {row.Name} | not reached | | | | |");
        }
    }
}
