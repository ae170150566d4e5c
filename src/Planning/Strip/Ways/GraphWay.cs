using Ramwright.Planning.Sequence;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>One way off (or the one way to reach a state) as the search sees it.</summary>
/// <param name="Index">Its place in the model, 0-based; null for a state.</param>
/// <param name="Needs">Nodes that must be done first; those done at the start are left out.</param>
/// <param name="Cost">Minutes and risk, scaled; no changes, no renewals.</param>
/// <param name="Renews">What it makes to be renewed, by the numbers of <see cref="WayGraph.Renewable"/>; parts owed at the start are left out.</param>
internal sealed record GraphWay(int? Index, NodeSet Needs, long Cost, int Tool, int Posture, NodeSet Renews)
{
    /// <summary>Whether this way is never worse than <paramref name="other"/>, whatever else the plan does.</summary>
    public bool Dominates(GraphWay other) => Cost <= other.Cost
        && (Tool == other.Tool || Tool == SequenceProblem.None)
        && (Posture == other.Posture || Posture == SequenceProblem.None)
        && Needs.IsSubsetOf(other.Needs)
        && Renews.IsSubsetOf(other.Renews);
}
