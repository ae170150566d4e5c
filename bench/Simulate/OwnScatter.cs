using System.Globalization;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Simulate;

/// <summary>Claims by a tool's own scatter, with and without a declared extension: false accept, and how often good tools conform.</summary>
internal static class OwnScatter
{
    private const double Coverage = 0.95;
    private const double Confidence = 0.95;

    /// <summary>A tool whose content at the lower limit is exactly 95 %; the upper limit lies at several distances, in σ.</summary>
    public static void FalseAccepts(int series)
    {
        Console.WriteLine("| runs | both limits at 95 % | window 4 σ | window 6 σ | upper limit far |");
        Console.WriteLine("|---|---|---|---|---|");
        var z = Normal.Quantile(Coverage);
        foreach (var (first, more) in new[] { (8, 0), (12, 0), (15, 0), (8, 8), (12, 12), (15, 15), (12, 6) })
        {
            var plan = new Plan(first, more);
            var cells = new[] { 2 * z, 4, 6, 1e9 }.Select(width => plan.Conforms(new Draws(20_250_101), series, -z, width - z) / series);
            Console.WriteLine($"| {plan} | {string.Join(" | ", cells.Select(c => c.ToString("0.00 %", CultureInfo.InvariantCulture)))} |");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{series:N0} series a cell; standard error {Math.Sqrt(0.05 * 0.95 / series):0.00 %}"));
    }

    /// <summary>A centred tool with this distance from centre to each guarded limit, in σ.</summary>
    public static double GoodTool(int first, int more, double halfWidth, int series) =>
        new Plan(first, more).Conforms(new Draws(20_250_102), series, -halfWidth, halfWidth) / series;

    private sealed class Plan
    {
        private readonly int _first;
        private readonly int _more;
        private readonly double _atFirst;
        private readonly double _atLast;

        public Plan(int first, int more)
        {
            (_first, _more) = (first, more);
            var each = more == 0 ? Confidence : TwoLooks.ConfidenceOfEach(first, more, Coverage, Confidence);
            _atFirst = ToleranceFactor.OneSided(first, Coverage, each);
            _atLast = ToleranceFactor.OneSided(first + more, Coverage, each);
        }

        public override string ToString() => _more == 0 ? $"{_first}" : $"{_first} + {_more}";

        /// <summary>How many of the series conform: both claims, at the first look or at the last; limits in σ from the true mean.</summary>
        public double Conforms(Draws draws, int series, double low, double high)
        {
            var conform = 0;
            for (var i = 0; i < series; i++)
            {
                double sum = 0, squares = 0;
                var n = 0;
                if (Look(_first, _atFirst) || (_more > 0 && Look(_first + _more, _atLast)))
                    conform++;

                bool Look(int runs, double factor)
                {
                    for (; n < runs; n++)
                    {
                        var x = draws.Normal01();
                        sum += x;
                        squares += x * x;
                    }

                    double mean = sum / n, reach = factor * Math.Sqrt((squares - sum * mean) / (n - 1));
                    return mean - reach >= low && mean + reach <= high;
                }
            }

            return conform;
        }
    }
}
