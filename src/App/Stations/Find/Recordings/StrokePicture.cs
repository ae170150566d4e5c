using Ramwright.App.Papers;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Phases;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>A recorded stroke with its phases and the fitted curve as SVG: one for the width of the work, one with larger letters for a narrow page.</summary>
public sealed record StrokePicture(string Broad, string Narrow)
{
    public static StrokePicture Of(StrokeRead read, ServiceModel model, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(model);
        var segments = read.Parts switch
        {
            Segmentation.WholeStroke whole => whole.Segments,
            Segmentation.HalfStroke half => half.Segments,
            _ => null,
        };
        var chart = RecordingPicture.Of(model.Tool.Name, read.Recording, segments, model.Limits.Pressure) with
        {
            Fitted = read.Answer is IdentificationAnswer.Told told ? [.. told.Fitted.Select(p => (p.Seconds, Pressure.FromPascals(p.Pascals)))] : [],
            Units = units,
        };
        return new(
            Svg.Write(StrokeChart.Of(chart with { Width = 680, Height = 430, LabelSize = 14 })),
            Svg.Write(StrokeChart.Of(chart with { Width = 358, Height = 560, LabelSize = 13 })));
    }
}
