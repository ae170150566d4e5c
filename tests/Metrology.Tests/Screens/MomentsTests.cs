using System.Globalization;
using System.Text.Json;
using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Tests.Screens;

public sealed class MomentsTests
{
    // NIST Statistical Reference Datasets, univariate, certified to 15 digits. NumAcc3 has its scatter in the eighth digit of 1,000,000.2:
    // the data are rounded to doubles there, which leaves nine
    [Theory]
    [InlineData("Lew", 13.9, 13.9)]
    [InlineData("Lottery", 14.5, 14.0)]
    [InlineData("Mavro", 14.5, 12.5)]
    [InlineData("NumAcc1", 15.0, 15.0)]
    [InlineData("NumAcc3", 14.5, 9.0)]
    public void Certified_mean_and_deviation_of_NIST(string name, double meanLre, double deviationLre)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "nist-strd", name + ".json")));
        var certified = file.RootElement.GetProperty("certified");
        var moments = Moments.Of([.. PublishedCsv.Rows($"nist-strd/{name}.csv").Select(r => r.Number("y"))]);
        Assert.True(Lre(certified, "mean", moments.Mean) >= meanLre, $"mean {Lre(certified, "mean", moments.Mean)}");
        Assert.True(Lre(certified, "sample_sd_n_minus_1", moments.StandardDeviation) >= deviationLre, $"deviation {Lre(certified, "sample_sd_n_minus_1", moments.StandardDeviation)}");
    }

    private static double Lre(JsonElement certified, string name, double computed)
    {
        var value = double.Parse(certified.GetProperty(name).GetString()!, CultureInfo.InvariantCulture);
        return computed == value ? 15 : Math.Min(15, -Math.Log10(Math.Abs(computed - value) / Math.Abs(value)));
    }
}
