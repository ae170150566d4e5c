using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>Lays out the strip map: what lies where, what comes off and in which order.</summary>
public static class StripMap
{
    /// <param name="plan">The plan to show; null draws the tool and numbers its parts in the model's order.</param>
    /// <param name="done">Parts that are off now; steps of the plan that are in it count as done.</param>
    public static StripMapDrawing Layout(ServiceModel model, StripPlan? plan = null, ImmutableHashSet<NodeId>? done = null) =>
        throw new NotSupportedException("The planner is being built.");
}
