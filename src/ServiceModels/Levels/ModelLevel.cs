using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Levels;

/// <summary>Says which level a model has reached and which missing facts would unlock most.</summary>
/// <remarks>
/// A level is complete when the stations that it unlocks can work from the model alone:
/// 0 always (the reader sees to it); 1 when there are parts and every part that is ever renewed has a number and a price, its own or a kit's;
/// 2 when every part comes off or is marked <c>renew: never</c>, and at least one state isolates the tool;
/// 3 when ram, pump, drive, relief and oil are there, and faults with symptoms and checks.
/// The level reached is the highest complete one without a gap below it. Facts that only sharpen are listed, and keep nothing back.
/// </remarks>
public static class ModelLevel
{
    private static readonly ImmutableArray<string> Names = ["limits", "parts", "ways off", "behaviour"];

    private static readonly ImmutableArray<ImmutableArray<string>> Unlocks =
    [
        ["Arrive", "Set", "Prove", "Release"],
        ["Price"],
        ["Plan", "Strip", "Rebuild"],
        ["Find", "the prior for Set"],
    ];

    public static LevelReport Of(ServiceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        ImmutableArray<MissingFact> missing = [.. PartFacts.Missing(model).Concat(WayFacts.Missing(model)).Concat(BehaviourFacts.Missing(model)).OrderByDescending(m => m.Weight).ThenBy(m => m.Level)];
        ImmutableArray<LevelState> levels = [.. Enumerable.Range(0, Names.Length).Select(n => StateOf(n, missing))];
        var reached = levels.TakeWhile(l => l.Complete).Last().Number;
        return new(reached, levels, missing);
    }

    private static LevelState StateOf(int number, ImmutableArray<MissingFact> missing)
    {
        ImmutableArray<string> keptBackBy = [.. missing.Where(m => m.Level == number && m.Needed).Select(Sentence)];
        return new(number, Names[number], keptBackBy.IsEmpty, Unlocks[number], keptBackBy);
    }

    private static string Sentence(MissingFact fact) => fact.Of.Length switch
    {
        0 => fact.Fact,
        <= 3 => $"{fact.Fact} of {string.Join(", ", fact.Of)}",
        var n => FormattableString.Invariant($"{fact.Fact} of {n} entries: {string.Join(", ", fact.Of.Take(3))} ..."),
    };
}
