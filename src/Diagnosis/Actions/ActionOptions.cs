using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Actions;

/// <summary>Where the work stands and what things cost in this shop.</summary>
public sealed record ActionOptions
{
    public required Rates Rates { get; init; }

    /// <summary>Parts off and states reached.</summary>
    public ImmutableHashSet<NodeId> Open { get; init; } = [];

    /// <summary>Remedies after which the tool was run and still failed.</summary>
    public ImmutableHashSet<RemedyId> Tried { get; init; } = [];

    /// <summary>A test run of the closed tool. From judgement.</summary>
    public TimeSpan TestRun { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>What it costs when nothing mends the tool (sent out, replaced); null takes twenty hours of labour. From judgement.</summary>
    public Money? GivenUp { get; init; }

    /// <summary>Faults less likely than this are left out of the search, a probability.</summary>
    public double LeastProbability { get; init; } = 0.01;

    /// <summary>States looked at before the best so far is answered with its gap, a number of 1 or more. The default is about a tenth of a second.</summary>
    public int StateLimit { get; init; } = 10_000;
}
