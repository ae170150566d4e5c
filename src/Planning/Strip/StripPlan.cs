using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>The answer to a <see cref="StripJob"/>: a plan, or why there is none.</summary>
public abstract record StripAnswer
{
    private StripAnswer() { }

    public sealed record Planned(StripPlan Plan) : StripAnswer;

    /// <summary>Targets that nothing frees, each with what it lacks.</summary>
    public sealed record NoWay(ImmutableArray<Unreachable> Targets) : StripAnswer;
}

/// <summary>A target that cannot be freed, and the parts or states in its way that nothing frees either.</summary>
public sealed record Unreachable(NodeId Target, ImmutableArray<NodeId> Lacking);

/// <summary>The cheapest order found to free the targets, and all that follows from it.</summary>
public sealed record StripPlan
{
    public required ImmutableArray<StripStep> Steps { get; init; }

    /// <summary>Parts to renew because of this plan, each once, with the reason.</summary>
    public required ImmutableArray<Renewal> Renewals { get; init; }

    /// <summary>Inspections that become possible on the way, in the order of the steps.</summary>
    public required ImmutableArray<PassedInspection> Inspections { get; init; }

    /// <summary>Shop tools used, in the order of first use.</summary>
    public required ImmutableArray<ToolId> Tools { get; init; }

    /// <summary>States reached, in order.</summary>
    public required ImmutableArray<NodeId> States { get; init; }

    public required Volume OilLost { get; init; }

    /// <summary>Expected time: steps, tool changes, posture changes.</summary>
    public required TimeSpan LikelyTime { get; init; }

    /// <summary>Time that is enough in nine cases of ten (P90), from the spread of each step and the factor they share.</summary>
    public required TimeSpan SafeTime { get; init; }

    /// <summary>Labour, renewals and risk: what the planner minimised.</summary>
    public required Money Cost { get; init; }

    public required PlanCost CostParts { get; init; }

    /// <summary>True when no cheaper order exists.</summary>
    public required bool ProvenOptimal { get; init; }

    /// <summary>How far above the optimum the cost may lie at most; zero when proven.</summary>
    public required Money Gap { get; init; }

    /// <summary>Search states looked at.</summary>
    public required int StatesSearched { get; init; }
}

/// <summary>Of what a plan's cost consists.</summary>
public sealed record PlanCost(Money Labour, Money Renewals, Money Risk);

/// <summary>One step: a part (or group) comes off, or a state is reached.</summary>
public sealed record StripStep
{
    /// <summary>The part that comes off or the state that is reached.</summary>
    public required NodeId Node { get; init; }

    /// <summary>The way off used, by its place in the model (0-based); null for a state.</summary>
    public int? Way { get; init; }

    /// <summary>A sentence in the imperative: "Unscrew the cap nut".</summary>
    public required string Operation { get; init; }

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }

    /// <summary>Time of the step itself.</summary>
    public required TimeSpan Time { get; init; }

    /// <summary>Time before it to fetch the tool and turn the work.</summary>
    public required TimeSpan ChangeTime { get; init; }

    /// <summary>Stand before the step.</summary>
    public required ImmutableArray<Caution> Cautions { get; init; }

    public required StepReason Why { get; init; }

    /// <summary>Renewals that this step brings about for the first time.</summary>
    public required ImmutableArray<Renewal> Renewals { get; init; }

    /// <summary>Inspections to make once this step is done.</summary>
    public required ImmutableArray<InspectionId> Inspections { get; init; }
}

/// <summary>Why a step is in the plan.</summary>
public abstract record StepReason
{
    private StepReason() { }

    /// <summary>It was asked for.</summary>
    public sealed record Target : StepReason;

    /// <summary>It stands right in the way of these later steps; what waits for one of them as well is left out.</summary>
    public sealed record InTheWayOf(ImmutableArray<NodeId> Nodes) : StepReason;
}

/// <summary>Why a part is renewed.</summary>
public enum RenewalCause { Rule, Disturbed, Destroyed, FailedInspection, Asked }

/// <summary>A part renewed, how many, and why.</summary>
/// <param name="By">The step's node that causes it; null where it follows from the rule alone.</param>
public sealed record Renewal(NodeId Part, int Count, RenewalCause Cause, NodeId? By);

/// <summary>An inspection that the plan makes possible, on which part, after which step (0-based).</summary>
public sealed record PassedInspection(NodeId Part, InspectionId Inspection, int AfterStep);
