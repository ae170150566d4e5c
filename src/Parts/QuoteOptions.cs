using System.Collections.Immutable;
using Ramwright.Planning;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>What a quote takes beside plans and prices. The times are the house's own assumptions; settings may carry better ones.</summary>
public sealed record QuoteOptions
{
    /// <summary>Rates for the replan that prices an inspection's added targets; null makes them from the quote's labour rate.</summary>
    public Rates? Rates { get; init; }

    /// <summary>Parts already off and states already reached when the plan began.</summary>
    public ImmutableHashSet<NodeId> DoneBefore { get; init; } = [];

    /// <summary>Time to take the tool in and make it safe.</summary>
    public TimeSpan ArriveTime { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Time to set the relief valve.</summary>
    public TimeSpan SettingTime { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>Time to put the tool on the bench for its proof and to close the papers.</summary>
    public TimeSpan ProofPreparation { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Time of one full run without the rest after it.</summary>
    public TimeSpan RunTime { get; init; } = TimeSpan.FromSeconds(15);

    public CoverOptions Cover { get; init; } = new();
}
