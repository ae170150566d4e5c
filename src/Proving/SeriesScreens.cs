using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Screens;

namespace Ramwright.Proving;

/// <summary>The screens of a series: they flag at 5 %, and delete nothing.</summary>
internal static class SeriesScreens
{
    private const double Level = 0.05;
    private const int FewestForTrend = 4; // below, no order of the runs has a chance under 5 %

    public static ImmutableArray<Flag> Flags(ImmutableArray<Pressure> peaks)
    {
        var readings = peaks.Select(p => p.Pascals).ToArray();
        var flags = ImmutableArray.CreateBuilder<Flag>();
        if (Grubbs.Test(readings) is { PValue: < Level } apart)
            flags.Add(new("grubbs", apart.Index + 1, apart.PValue,
                $"run {apart.Index + 1} lies apart from the others (Grubbs, {Chance(apart.PValue)} by chance); it counts unless a cause is recorded"));
        if (readings.Length >= FewestForTrend && MannKendall.Test(readings) is { PValue: < Level } trend)
            flags.Add(new("trend", null, trend.PValue,
                $"the runs {(trend.S > 0 ? "climb" : "fall")} in the order taken (Mann–Kendall, {Chance(trend.PValue)} by chance): warm-up, or something giving way"));
        return flags.ToImmutable();
    }

    private static string Chance(double p) => p < 0.001 ? "less than 0.1 %" : (100 * p).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
