using System.Globalization;

namespace Ramwright.Simulate;

/// <summary>How often good, centred tools conform: limits and scatter in % of the nominal pressure, 1 % taken off each side for the device.</summary>
internal static class GoodTools
{
    private const double SystematicPercent = 1;
    private static readonly double[] ScatterPercent = [0.3, 0.5, 0.7, 1.0, 1.25, 1.5];
    private static readonly int[] Runs = [8, 12, 15];

    public static void Print(int series)
    {
        foreach (var limit in new[] { 3.0, 5.0 })
        {
            var half = ScatterPercent.Select(s => (limit - SystematicPercent) / s).ToArray();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Limits ±{limit} %:"));
            Console.WriteLine();
            Console.WriteLine($"| runs, scatter from | {string.Join(" | ", ScatterPercent.Select(s => s.ToString("0.## '%'", CultureInfo.InvariantCulture)))} |");
            Console.WriteLine("|---|" + string.Concat(Enumerable.Repeat("---|", half.Length)));
            foreach (var n in Runs)
                Row($"{n}, own", half.Select(h => OwnScatter.GoodTool(n, 0, h, 10 * series)));
            foreach (var n in Runs)
                Row($"{n} + {n}, own", half.Select(h => OwnScatter.GoodTool(n, n, h, 10 * series)));
            foreach (var earlier in new[] { 8, 20 })
            {
                var conforms = Moderated.GoodTools(earlier, 60, series, half);
                for (var r = 0; r < Runs.Length; r++)
                    Row($"{Runs[r]}, moderated by {earlier}", Enumerable.Range(0, half.Length).Select(h => conforms[r, h]));
            }

            Console.WriteLine();
        }
    }

    private static void Row(string name, IEnumerable<double> shares) =>
        Console.WriteLine($"| {name} | {string.Join(" | ", shares.Select(s => s.ToString("0 %", CultureInfo.InvariantCulture)))} |");
}
