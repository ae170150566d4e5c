using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>How a verb ends; the number is the exit status, the same with and without <c>--json</c>.</summary>
public enum Exit
{
    /// <summary>The answer is yes, or the work is done.</summary>
    Yes = 0,

    /// <summary>The answer is no.</summary>
    No = 1,

    /// <summary>Bad use or bad input.</summary>
    BadInput = 2,

    /// <summary>Undecided, or proven only up to a stated gap.</summary>
    Undecided = 3,

    /// <summary>Our own fault or the machine's: disk, database, a defect.</summary>
    Fault = 70,
}

/// <summary>What a verb answers: words for people, an object for programs, and one exit status for both.</summary>
public sealed record Answer(Exit Exit, string Text, JsonObject Json)
{
    /// <summary>Mistakes in what was given; they go to standard error as text, or into the object as <c>mistakes</c>.</summary>
    public ImmutableArray<Mistake> Mistakes { get; init; } = [];

    /// <summary>What follows from the mistakes, closing their count line.</summary>
    public string Consequence { get; init; } = "nothing was done";

    /// <summary>Input that could not be used: every mistake at once, exit status 2 unless the verb says otherwise.</summary>
    public static Answer Refused(ImmutableArray<Mistake> mistakes, Exit exit = Exit.BadInput) =>
        new(exit, "", new JsonObject { ["mistakes"] = MistakesJson.Of(mistakes) }) { Mistakes = mistakes };

    /// <summary>Bad use of the verb itself: an option or argument that cannot be taken.</summary>
    public static Answer BadUse(string argument, string what, string mend) =>
        Refused([new Mistake(Place.Whole(argument), what, mend, "usage")]);
}

/// <summary>Mistakes as programs read them.</summary>
internal static class MistakesJson
{
    public static JsonArray Of(IEnumerable<Mistake> mistakes) => new([.. mistakes.Select(m => new JsonObject
    {
        ["code"] = m.Code,
        ["file"] = m.At.File,
        ["line"] = m.At.Line,
        ["column"] = m.At.Column,
        ["length"] = m.At.Length,
        ["what"] = m.What,
        ["mend"] = m.Mend,
    })]);
}
