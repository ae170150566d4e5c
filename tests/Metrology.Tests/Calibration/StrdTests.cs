using System.Globalization;
using System.Text.Json;
using Ramwright.Metrology.Calibration;

namespace Ramwright.Metrology.Tests.Calibration;

public sealed class StrdTests
{
    // NIST Statistical Reference Datasets, linear regression: certified to 15 digits. LRE = −log10 of the relative error, 15 at most.
    // With 31 digits carried, only the last certified digit and the rounding of decimal data to doubles are left (Norris, Pontius, Wampler2).
    [Theory]
    [InlineData("Norris", 2, true, 13.8)]
    [InlineData("Pontius", 3, true, 13.4)]
    [InlineData("NoInt1", 1, false, 14.6)]
    [InlineData("Wampler2", 6, true, 13.1)]
    [InlineData("Wampler4", 6, true, 14.4)]
    public void Certified_fits_of_NIST(string name, int coefficients, bool intercept, double leastLre)
    {
        var rows = PublishedCsv.Rows($"nist-strd/{name}.csv");
        var fit = LeastSquares.Fit([.. rows.Select(r => Powers(r.Number("x"), coefficients, intercept))], [.. rows.Select(r => r.Number("y"))], [])!;
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "nist-strd", name + ".json")));
        var certified = file.RootElement.GetProperty("certified");
        var scatter = Math.Sqrt(fit.Squares / fit.DegreesOfFreedom);
        var least = double.PositiveInfinity;
        var place = 0;
        foreach (var coefficient in certified.GetProperty("coefficients").EnumerateArray())
        {
            least = Math.Min(least, Lre(Text(coefficient, "estimate"), fit.Coefficients[place]));
            var row = new double[coefficients];
            row[place++] = 1;
            least = Math.Min(least, Lre(Text(coefficient, "sd"), scatter * Math.Sqrt(fit.Leverage(row)), zeroWithin: 1e-12));
        }

        least = Math.Min(least, Lre(Text(certified, "residual_sd"), scatter, zeroWithin: 1e-12));
        TestContext.Current.SendDiagnosticMessage(string.Create(CultureInfo.InvariantCulture, $"{name}: LRE {least:0.0}"));
        Assert.True(least >= leastLre, string.Create(CultureInfo.InvariantCulture, $"LRE {least:0.00}"));
    }

    [Fact]
    public void Columns_that_cannot_be_told_apart_have_no_fit()
    {
        DoubleDouble[][] rows = [[1, 2], [2, 4], [3, 6]];
        Assert.Null(LeastSquares.Fit(rows, [1, 2, 3], []));
        Assert.Null(LeastSquares.Fit([[1, 2]], [1], []));
    }

    private static DoubleDouble[] Powers(double x, int count, bool intercept)
    {
        var row = new DoubleDouble[count];
        row[0] = intercept ? 1 : x;
        for (var i = 1; i < count; i++)
            row[i] = row[i - 1] * x;
        return row;
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static double Lre(string certified, double computed, double zeroWithin = 0)
    {
        var value = double.Parse(certified, CultureInfo.InvariantCulture);
        var error = Math.Abs(computed - value);
        return value == 0 ? (error <= zeroWithin ? 15 : 0) : Math.Min(15, -Math.Log10(error / Math.Abs(value)));
    }
}
