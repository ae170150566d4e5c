using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Levels;

/// <summary>How far a model has come, and which missing facts would unlock most.</summary>
/// <param name="Reached">0 to 3: the highest level whose own facts and those of all levels below are there.</param>
/// <param name="Levels">The four levels in their order.</param>
/// <param name="Missing">Facts that are not there, the one that would unlock most first.</param>
public sealed record LevelReport(int Reached, ImmutableArray<LevelState> Levels, ImmutableArray<MissingFact> Missing);

/// <summary>One level: whether its facts are there, what it unlocks, and what keeps it back.</summary>
/// <param name="Number">0 to 3.</param>
/// <param name="Name">limits, parts, ways off or behaviour.</param>
/// <param name="Complete">Its own facts are there, whatever the levels below lack.</param>
/// <param name="Unlocks">What works with it: Arrive, Set, Prove, Release, Price, Plan, Strip, Rebuild, Find ...</param>
/// <param name="KeptBackBy">In words, what is missing for it; empty when complete.</param>
public sealed record LevelState(int Number, string Name, bool Complete, ImmutableArray<string> Unlocks, ImmutableArray<string> KeptBackBy);

/// <summary>A fact that is not there.</summary>
/// <param name="Level">The level it belongs to.</param>
/// <param name="Needed">Whether the level is not reached without it; otherwise it sharpens what already works.</param>
/// <param name="Fact">What is missing, such as 'ways off'.</param>
/// <param name="Of">Ids of the entries that lack it; empty when it is a fact of the tool.</param>
/// <param name="Unlocks">What it would unlock, in words.</param>
/// <param name="Weight">How much hangs on it: the number of entries and stations that wait for it; only the order counts.</param>
public sealed record MissingFact(int Level, bool Needed, string Fact, ImmutableArray<string> Of, string Unlocks, int Weight);
