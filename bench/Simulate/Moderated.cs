using System.Globalization;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Moderation;

namespace Ramwright.Simulate;

/// <summary>Claims by moderated scatter. Each series counts with its exact chance given σ and the scatter drawn, which makes the simulation sharper than counting.</summary>
internal static class Moderated
{
    private const double Coverage = 0.95;
    private const double Confidence = 0.95;
    private const int EarlierDegrees = 11; // earlier series of 12 runs
    private const int ToolsPerSet = 10; // new tools judged by the same earlier series; the standard error is that of the sets
    private static readonly int[] Runs = [8, 12, 15];

    /// <summary>False accept of a tool just bad enough: averaged over tools and earlier series of the population, and for a tool of 1.5 times the typical scatter.</summary>
    public static void FalseAccepts(int series)
    {
        Console.WriteLine("| earlier series | ν₀ | 8 runs | 12 runs | 15 runs | standard error | 8, 12, 15 runs at 1.5 times the typical scatter |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var alike in new[] { 4, 10, 30, 2, double.PositiveInfinity })
        {
            foreach (var earlier in new[] { 8, 20, 60 })
                FalseAccept(earlier, alike, series);
        }
    }

    /// <summary>How often a centred tool conforms whose guarded limits lie so many σ from the centre, by runs and half width; the tool scatters as is typical.</summary>
    public static double[,] GoodTools(int earlier, double alike, int series, double[] halfWidths)
    {
        var conforms = new double[Runs.Length, halfWidths.Length];
        var draws = new Draws(20_250_103);
        for (var set = 0; set < series / ToolsPerSet; set++)
        {
            var population = Population(draws, earlier, alike);
            for (var r = 0; r < Runs.Length; r++)
            {
                var factor = new NextSeries(population, Runs[r]).Factor(Coverage, Confidence);
                for (var tool = 0; tool < ToolsPerSet; tool++)
                {
                    var reach = factor * Used(population, draws.ScatterRatio(Runs[r] - 1), Runs[r]);
                    for (var h = 0; h < halfWidths.Length; h++)
                        conforms[r, h] += Math.Max(0, 2 * Normal.Cdf(Math.Sqrt(Runs[r]) * (halfWidths[h] - reach)) - 1) / series;
                }
            }
        }

        return conforms;
    }

    private static void FalseAccept(int earlier, double alike, int series)
    {
        var draws = new Draws(20_250_104);
        var z = Normal.Quantile(Coverage);
        var sets = series / ToolsPerSet;
        double[] accepted = new double[Runs.Length], squares = new double[Runs.Length], restless = new double[Runs.Length];
        for (var set = 0; set < sets; set++)
        {
            var population = Population(draws, earlier, alike);
            for (var r = 0; r < Runs.Length; r++)
            {
                var factor = new NextSeries(population, Runs[r]).Factor(Coverage, Confidence);
                var ofSet = 0.0;
                for (var tool = 0; tool < ToolsPerSet; tool++)
                {
                    var ratio = draws.ScatterRatio(Runs[r] - 1);
                    ofSet += Accept(draws.Tool(alike)) / ToolsPerSet;
                    restless[r] += Accept(1.5) / series;

                    double Accept(double sigma) => Normal.Tail(Math.Sqrt(Runs[r]) * (factor * Used(population, sigma * ratio, Runs[r]) / sigma - z));
                }

                accepted[r] += ofSet / sets;
                squares[r] += ofSet * ofSet / sets;
            }
        }

        var error = Runs.Select((_, r) => Math.Sqrt((squares[r] - accepted[r] * accepted[r]) / sets)).Max();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {earlier} | {(double.IsInfinity(alike) ? "∞" : alike)} | {accepted[0]:0.00 %} | {accepted[1]:0.00 %} | {accepted[2]:0.00 %} | {error:0.00 %} | {restless[0]:0.0 %}, {restless[1]:0.0 %}, {restless[2]:0.0 %} |"));
    }

    private static double Used(ScatterPopulation population, double own, int runs) => Math.Max(own, population.Moderate(new(own, runs - 1)));

    private static ScatterPopulation Population(Draws draws, int earlier, double alike)
    {
        var series = new SeriesScatter[earlier];
        for (var i = 0; i < earlier; i++)
            series[i] = new(draws.Tool(alike) * draws.ScatterRatio(EarlierDegrees), EarlierDegrees);
        return new ScatterPopulation(series);
    }
}
