using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Screens;
using Ramwright.Metrology.Text;

namespace Ramwright.Proving;

/// <summary>The screens of a series: one false flag among all in at most 5 % of series. They flag, and delete nothing.</summary>
internal static class SeriesScreens
{
    /// <summary>So many earlier series, the latest ones, are pooled: with a dozen runs in each, a hundred residuals show the form.</summary>
    private const int MostEarlier = 8;

    /// <param name="peaks">Of the valid runs, in the order taken.</param>
    /// <param name="resolution">Smallest step of the device, when it is known.</param>
    /// <param name="earlier">Earlier series of the model: one short series shows little of the form of its scatter, several together do.</param>
    public static ImmutableArray<Flag> Flags(ImmutableArray<Pressure> peaks, Pressure? resolution, ImmutableArray<ImmutableArray<Pressure>> earlier)
    {
        ImmutableArray<ImmutableArray<double>> before = [.. earlier.Take(MostEarlier).Select(s => s.Select(p => p.Pascals).ToImmutableArray())];
        var found = ScreenReport.Of([.. peaks.Select(p => p.Pascals)], before, resolution: resolution?.Pascals ?? 0).Flags.ToList();
        var apart = found.Find(f => f.Screen == Screen.Apart);
        var flags = ImmutableArray.CreateBuilder<Flag>();
        foreach (var finding in found)
        {
            var text = ScreenText.Explain(finding, "run");
            switch (finding.Screen)
            {
                case Screen.Apart:
                    flags.Add(new("grubbs", finding.Readings[0] + 1, finding.Adjusted, text));
                    break;
                case Screen.SeveralApart or Screen.Jump when apart is not null && finding.Readings.SequenceEqual(apart.Readings):
                    break; // the same run, said once
                case Screen.SeveralApart:
                    flags.Add(new("several-apart", null, finding.Adjusted, text));
                    break;
                case Screen.Trend:
                    flags.Add(new("trend", null, finding.Adjusted, text));
                    break;
                case Screen.Neighbours:
                    flags.Add(new("neighbours", null, finding.Adjusted, text));
                    break;
                case Screen.Jump:
                    flags.Add(new("jump", finding.Readings[0] + 1, finding.Adjusted, text));
                    break;
                case Screen.Drift:
                    flags.Add(new("drift", null, finding.Adjusted, text));
                    break;
                default:
                    flags.Add(new("not-normal", null, finding.Adjusted, text));
                    break;
            }
        }

        return flags.ToImmutable();
    }
}
