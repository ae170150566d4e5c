using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>What is to be freed, and from where the work starts: a whole tool, or one already partly open.</summary>
public sealed record StripJob
{
    public required ServiceModel Model { get; init; }

    public required Rates Rates { get; init; }

    /// <summary>Parts that must come off; states may be targets too.</summary>
    public required ImmutableArray<NodeId> Targets { get; init; }

    /// <summary>Parts already off and states already reached.</summary>
    public ImmutableHashSet<NodeId> Done { get; init; } = [];

    /// <summary>Renewals already owed: they cost nothing more in this plan.</summary>
    public ImmutableHashSet<NodeId> RenewalsOwed { get; init; } = [];

    public ToolId? ToolInHand { get; init; }

    public PostureId? Posture { get; init; }

    /// <summary>After so many search states the answer is the best found so far, with its gap. The default is less than a second of work.</summary>
    public int StateLimit { get; init; } = 200_000;
}
