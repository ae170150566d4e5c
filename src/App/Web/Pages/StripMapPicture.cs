using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Web.Pages;

/// <summary>Interim.</summary>
public static class StripMapPicture
{
    public static Picture Of(ServiceModel model, StripPlan? plan, ImmutableHashSet<NodeId> done) => new(100, 40, model.Tool.Name);
}
