using Ramwright.Metrology.Text;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.Proving;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Prove;

/// <summary>The proof chart of a series as SVG: one for the width of the work, one with larger letters for a narrow page.</summary>
public sealed record ProofPicture(string Broad, string Narrow)
{
    public static ProofPicture Of(SeriesState series, Verdict verdict, ServiceModel model, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(model);
        var chart = new ProofChartInput
        {
            Limits = series.Opened.What.Limits,
            Nominal = model.Limits.Nominal,
            GuardLow = verdict.GuardLow,
            GuardHigh = verdict.GuardHigh,
            Planned = series.Places,
            Runs = [.. series.Runs.Select(r => new ChartRun(r.Taken.What.Peak, r.Void is not null))],
            Units = units,
        };
        return new(
            Svg.Write(ProofChart.Of(chart with { Width = 680, Height = 240, LabelSize = 16 })),
            Svg.Write(ProofChart.Of(chart with { Width = 358, Height = 250, LabelSize = 14, ShowValues = false })));
    }
}
