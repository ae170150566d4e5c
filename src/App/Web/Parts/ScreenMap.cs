using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Maps;
using Ramwright.Planning.Map;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Web.Parts;

/// <summary>The strip map beside the work: narrow, so its balloons are drawn large enough to be read.</summary>
public static class ScreenMap
{
    /// <summary>Width of the drawing's column at the usual tablet, in CSS pixels.</summary>
    private const double Column = 430;

    private const double BalloonShare = 1.0 / 37;

    /// <summary>The map as SVG.</summary>
    /// <param name="plan">Null draws the tool as the model has it, without numbers.</param>
    public static string Of(ServiceModel model, StripPlan? plan = null, ImmutableHashSet<NodeId>? done = null)
    {
        var drawing = StripMap.Layout(model, plan, done, BalloonShare);
        return Svg.Write(StripMapPicture.Of(plan is null ? drawing.WithoutBalloons() : drawing, Column));
    }
}
