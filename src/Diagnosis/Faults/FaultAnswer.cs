using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>What the evidence says about the faults.</summary>
public abstract record FaultAnswer
{
    private FaultAnswer() { }

    public sealed record Found(FaultReport Report) : FaultAnswer;

    /// <summary>The evidence has probability zero under this model.</summary>
    /// <param name="Conflict">Data that cannot be together; without any one of them the rest could.</param>
    public sealed record Contradictory(ImmutableArray<Datum> Conflict) : FaultAnswer;
}

/// <summary>The faults by falling probability, and what they rest on.</summary>
public sealed record FaultReport
{
    public required ImmutableArray<RankedFault> Faults { get; init; }

    /// <summary>Probability that the tool has none of the model's faults, 0 to 1.</summary>
    public required double SoundProbability { get; init; }

    /// <summary>The likeliest sets of faults, 'exactly these', by falling probability.</summary>
    public required ImmutableArray<FaultSet> Sets { get; init; }

    /// <summary>Data that were weighed, each once.</summary>
    public required ImmutableArray<Datum> Data { get; init; }

    public required ImmutableArray<CountedWith> LeftOut { get; init; }

    /// <summary>False when the network was too wide to be exact: then each probability lies between its bounds.</summary>
    public required bool IsExact { get; init; }

    /// <summary>Whether no fault is likelier than its rate alone would make it, by a factor of two and to 20 % or more.</summary>
    public bool NothingSpeaks => Faults.All(f => f.Probability < 0.2 || f.Probability < 2 * f.Rate);
}

/// <summary>A fault and how likely it is now.</summary>
/// <param name="Rate">Prior probability.</param>
/// <param name="Probability">Probability given all that is known; the middle of the bounds where it is not exact.</param>
/// <param name="Low">Bound below; the probability itself when exact.</param>
/// <param name="High">Bound above.</param>
/// <param name="Reasons">Data that moved it, the strongest first; small ones left out.</param>
public sealed record RankedFault(FaultId Fault, string Name, double Rate, double Probability, double Low, double High, ImmutableArray<Reason> Reasons);

/// <summary>How far one datum moved a fault: the log-odds with all data less the log-odds with all but this one.</summary>
/// <param name="LogOdds">Natural logarithm; positive speaks for the fault. Capped at ±20 where a fault becomes certain.</param>
public sealed record Reason(Datum Datum, double LogOdds);

/// <summary>Exactly these faults, and the probability of that.</summary>
public sealed record FaultSet(ImmutableArray<FaultId> Faults, double Probability);
