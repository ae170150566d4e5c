using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Actions;

/// <summary>What to do next.</summary>
public abstract record ServiceAct
{
    private ServiceAct() { }

    public sealed record MakeCheck(CheckId Check) : ServiceAct;

    /// <param name="Measurement">Its id in <c>QuickMeasurement</c>.</param>
    public sealed record Measure(string Measurement) : ServiceAct;

    public sealed record Repair(RemedyId Remedy) : ServiceAct;

    /// <summary>Close the tool and run it: what was done may be enough, or nothing is wrong.</summary>
    public sealed record RunIt : ServiceAct;

    /// <summary>Nothing that is left to do is worth its cost: send it out, retire it, or look where the model does not.</summary>
    public sealed record Stop : ServiceAct;
}

/// <summary>The advice, or why there is none.</summary>
public abstract record ActionAnswer
{
    private ActionAnswer() { }

    public sealed record Advised(Advice Advice) : ActionAnswer;

    public sealed record Contradictory(ImmutableArray<Datum> Conflict) : ActionAnswer;
}

/// <summary>The act with the least expected cost, what it takes and why.</summary>
public sealed record Advice
{
    public required PricedAct Next { get; init; }

    /// <summary>Repairs to be made in the same opening, before the tool is closed and run.</summary>
    public required ImmutableArray<ServiceAct> AlongWithIt { get; init; }

    /// <summary>Expected cost until the tool works or is given up, the act included.</summary>
    public required Money ExpectedCost { get; init; }

    /// <summary>How far above the optimum the expected cost may lie at most; zero when proven.</summary>
    public required Money Gap { get; init; }

    /// <summary>Other ways to go on, by rising expected cost as far as was looked.</summary>
    public required ImmutableArray<PricedAct> Others { get; init; }

    /// <summary>What each check and measurement not yet made would be worth, most first.</summary>
    public required ImmutableArray<LookWorth> Looks { get; init; }

    /// <summary>Probability of sets of faults that the search left out, 0 to 1.</summary>
    public required double LeftOutProbability { get; init; }

    public required int StatesSearched { get; init; }
}

/// <summary>An act and what it takes from where the tool stands, the way in included, the way back not.</summary>
/// <param name="Time">Way in and the act itself.</param>
/// <param name="Price">Labour, parts and risk of the same.</param>
/// <param name="ExpectedCost">Expected cost until the end if this is done first.</param>
/// <param name="Chance">For a repair: the probability that a run after it alone passes; for a run: that it passes; else null.</param>
/// <param name="Opens">Parts and states on the way in.</param>
public sealed record PricedAct(ServiceAct Act, TimeSpan Time, Money Price, Money ExpectedCost, double? Chance, ImmutableArray<NodeId> Opens);

/// <summary>What a check or measurement would be worth now.</summary>
/// <param name="Saves">Expected saving by knowing its outcome before the first repair, its own cost not taken off; zero or more.</param>
/// <param name="Bits">What it tells of the sets of faults on average: mutual information, a number of bits.</param>
/// <param name="Outcomes">Each outcome, its probability now, and the likeliest fault after it.</param>
public sealed record LookWorth(ServiceAct Act, TimeSpan Time, Money Price, Money Saves, double Bits, ImmutableArray<LookOutcome> Outcomes);

/// <summary>One outcome of a look.</summary>
/// <param name="Probability">Chance of the outcome, 0 to 1.</param>
/// <param name="Likeliest">The likeliest fault after it; null when a sound tool is likelier than any.</param>
/// <param name="LikeliestProbability">Probability of that, 0 to 1.</param>
public sealed record LookOutcome(string Id, string Name, double Probability, FaultId? Likeliest, double LikeliestProbability);
