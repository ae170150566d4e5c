using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Plan;

/// <summary>What the planner proposes for a job, or why it can propose nothing.</summary>
public abstract record PlanProposal
{
    private PlanProposal() { }

    /// <param name="Targets">What was asked for.</param>
    /// <param name="Start">Parts off and states reached when the plan begins.</param>
    public sealed record Proposed(ImmutableArray<NodeId> Targets, ImmutableHashSet<NodeId> Start, StripPlan Plan) : PlanProposal;

    public sealed record NoWay(ImmutableArray<Unreachable> Targets) : PlanProposal;

    /// <summary>Nothing is to be stripped, or nothing was decided.</summary>
    public sealed record NothingAsked : PlanProposal;
}
