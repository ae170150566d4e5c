using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Reading;

/// <summary>What an id names.</summary>
internal enum Named
{
    Part,
    State,
    Tool,
    Posture,
    Kit,
    Unit,
    Fault,
    Symptom,
    Check,
    Remedy,
    Inspection,
    Model,

    /// <summary>A part or a state: they share one namespace.</summary>
    Node,
}

/// <summary>Who is called what, and who is called upon; at the end every call is answered or a mistake.</summary>
internal sealed class NameBook
{
    private readonly Dictionary<(Named, string), Place> declared = [];
    private readonly List<(Named Kind, string Id, Place At)> calls = [];

    /// <summary>Whether postures are listed; without the section they are free.</summary>
    public bool PosturesListed { get; set; }

    /// <summary>Postures called upon while none are listed, in order.</summary>
    public IEnumerable<string> FreePostures => PosturesListed ? [] : calls.Where(c => c.Kind == Named.Posture).Select(c => c.Id).Distinct(StringComparer.Ordinal);

    public void Declare(Named kind, string id, Place at, MistakeList mistakes)
    {
        if (Clash(kind, id) is var (what, first))
            mistakes.Add(at, $"'{id}' is already the id of {what} (line {first.Line.ToString(CultureInfo.InvariantCulture)})", kind is Named.Part or Named.State
                ? "give one of the two another id: parts and states share one namespace" : "give one of the two another id", "duplicate-id");
        else
            declared.Add((kind, id), at);
    }

    public void Call(Named kind, string id, Place at) => calls.Add((kind, id, at));

    /// <summary>Reports each call that nothing answers.</summary>
    public void Answer(MistakeList mistakes)
    {
        foreach (var (kind, id, at) in calls)
            if (!mistakes.Full && !Knows(kind, id))
                Unanswered(kind, id, at, mistakes);
    }

    public bool Knows(Named kind, string id) => kind switch
    {
        Named.Node => Knows(Named.Part, id) || Knows(Named.State, id),
        Named.Posture when !PosturesListed => true,
        _ => declared.ContainsKey((kind, id)),
    };

    private (string What, Place First)? Clash(Named kind, string id)
    {
        if (declared.TryGetValue((kind, id), out var first))
            return ($"{Article(kind)} {Word(kind)}", first);
        if (kind is Named.Part or Named.State && declared.TryGetValue((kind == Named.Part ? Named.State : Named.Part, id), out first))
            return (kind == Named.Part ? "a state" : "a part", first);
        return null;
    }

    private void Unanswered(Named kind, string id, Place at, MistakeList mistakes)
    {
        var known = declared.Where(d => d.Key.Item1 == kind || (kind == Named.Node && d.Key.Item1 is Named.Part or Named.State));
        var near = mistakes.Near(id, known.Select(d => d.Key.Item2)); // asked lazily: a file of mistakes is not searched for each
        var line = near is null ? 0 : known.First(d => d.Key.Item2 == near).Value.Line;
        var section = kind == Named.Node ? "parts: or states:" : $"{Word(kind)}s:";
        var mend = near is null
            ? $"add it under {section}, or take it away here"
            : string.Create(CultureInfo.InvariantCulture, $"write {near} (line {line}), or add the {Word(kind)} under {section}");
        if (kind == Named.Part && Knows(Named.State, id))
            mistakes.Add(at, $"'{id}' is a state; a part is wanted here", "name a part", "unknown-part");
        else
            mistakes.Add(at, $"no {Word(kind)} is called '{id}'", mend, CodeOf(kind));
    }

    private static string Article(Named kind) => kind == Named.Inspection ? "an" : "a";

    /// <summary>'unknown-unit' is about units of measurement.</summary>
    private static string CodeOf(Named kind) => kind switch
    {
        Named.Node => "unknown-part",
        Named.Unit => "unknown-made-up-unit",
        _ => $"unknown-{Word(kind)}",
    };

    private static string Word(Named kind) => kind == Named.Node ? "part or state" : kind.ToString().ToLowerInvariant();
}
