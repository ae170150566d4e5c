using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Networks;

/// <summary>Reads a network from BIF text, the interchange format in which networks are published (F. Cozman, JavaBayes, 1998; from memory).</summary>
/// <remarks>
/// Blocks <c>network</c>, <c>variable</c> (<c>type discrete [n] { states }</c>) and <c>probability</c> (<c>table</c> without parents, one row per combination with
/// them, <c>default</c> for the rest); <c>property</c> is passed over. A row is taken if it sums to 1 within 1 % and is then scaled to 1. A <c>table</c>
/// with parents is refused, because writers disagree about its order. Bounded: 4 MiB, 5,000 variables, 1,000 states, 4 million cells, 100 mistakes.
/// </remarks>
public static class BifReader
{
    /// <summary>Most characters that are read.</summary>
    public const int LargestText = 4 * 1024 * 1024;

    private const int MostVariables = 5_000, MostMistakes = 100;

    /// <param name="text">The whole text.</param>
    /// <param name="file">Its name, for places.</param>
    public static NetworkReading Read(string text, string file)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(file);
        if (text.Length > LargestText)
            return new NetworkReading.Refused([new(Place.Whole(file), "the network is larger than 4 MiB", "give a smaller network", "network-too-large")]);
        var walk = new BifWalk(BifText.Words(text, file));
        var variables = new BifVariables(walk);
        var tables = new BifTables(walk, variables);
        while (!walk.Next.IsEnd && walk.Mistakes.Count < MostMistakes && variables.All.Count <= MostVariables)
            Block(walk, variables, tables);
        if (variables.All.Count > MostVariables)
            walk.Add(Place.Whole(file), "the network has more than 5,000 variables", "give a smaller network", "network-too-large");
        if (walk.Mistakes.Count == 0)
            tables.Close(file);
        if (walk.Mistakes.Count == 0)
            return new NetworkReading.Read(new([.. variables.All], [.. tables.All.Select(t => t!)]));
        var lines = text.Split('\n');
        return new NetworkReading.Refused([.. walk.Mistakes.Select(m => m.At.Line > 0 ? m with { Excerpt = lines[m.At.Line - 1].TrimEnd('\r') } : m)]);
    }

    private static void Block(BifWalk walk, BifVariables variables, BifTables tables)
    {
        var word = walk.Take();
        var well = word.Text switch
        {
            "network" => walk.SkipBlock(),
            "variable" => variables.ReadOne(),
            "probability" => tables.ReadOne(),
            _ => walk.Wrong(word, "network, variable or probability"),
        };
        if (!well)
            walk.SkipToBlock();
    }
}

/// <summary>Steps through the words and gathers mistakes.</summary>
internal sealed class BifWalk(List<BifWord> words)
{
    private int at;

    public List<Mistake> Mistakes { get; } = [];

    public BifWord Next => words[at];

    public BifWord Take() => words[at].IsEnd ? words[at] : words[at++];

    public void Add(Place place, string what, string mend, string code) => Mistakes.Add(new(place, what, mend, code));

    public bool Wrong(BifWord got, string wanted)
    {
        var text = got.Text.Length > 40 ? got.Text[..40] + "..." : got.Text;
        Add(got.At, got.IsEnd ? $"the text ends where {wanted} is wanted" : $"'{text}' stands where {wanted} is wanted", $"write {wanted}", "network-form");
        return false;
    }

    public bool Expect(string sign) => Next.Is(sign) ? Passed() : Wrong(Next, $"'{sign}'");

    /// <summary>A name: any word that is no sign.</summary>
    public bool Name(string what, out BifWord name)
    {
        name = Next;
        return name.IsEnd || name.Text is "{" or "}" or "(" or ")" or "[" or "]" or "|" or "," or ";" ? Wrong(name, what) : Passed();
    }

    /// <summary>Names with commas between, up to a closing sign.</summary>
    public bool Names(string what, string close, List<BifWord> names)
    {
        while (!Next.Is(close))
        {
            if (!Name(what, out var name))
                return false;
            names.Add(name);
            if (Next.Is(","))
                at++;
        }

        return Passed();
    }

    public bool SkipBlock()
    {
        while (!Next.IsEnd && !Next.Is("}"))
            at++;
        return Expect("}");
    }

    public bool SkipProperty()
    {
        while (!Next.IsEnd && !Next.Is(";") && !Next.Is("}"))
            at++;
        return Expect(";");
    }

    public void SkipToBlock()
    {
        while (!Next.IsEnd && Next.Text is not ("network" or "variable" or "probability"))
            at++;
    }

    private bool Passed()
    {
        at++;
        return true;
    }
}

/// <summary>Reads the variables.</summary>
internal sealed class BifVariables(BifWalk walk)
{
    private const int MostStates = 1_000;
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);

    public List<NetworkVariable> All { get; } = [];

    /// <summary>The place of the variable that a word names, or -1 with a mistake.</summary>
    public int PlaceOf(BifWord name)
    {
        if (places.TryGetValue(name.Text, out var place))
            return place;
        walk.Add(name.At, $"no variable is called '{name.Text}'", NearName.Find(name.Text, places.Keys.Take(2000)) is { } near ? $"write {near}" : "add a variable block for it, before its table", "network-name");
        return -1;
    }

    public bool ReadOne()
    {
        var states = new List<BifWord>();
        if (!walk.Name("the name of a variable", out var name) || !walk.Expect("{"))
            return false;
        while (walk.Next.Is("property"))
        {
            if (!walk.SkipProperty())
                return false;
        }

        if (!walk.Expect("type") || !walk.Expect("discrete") || !walk.Expect("[") || !walk.Name("the number of states", out var count) || !walk.Expect("]")
            || !walk.Expect("{") || !walk.Names("a state", "}", states) || !walk.Expect(";") || !walk.SkipBlock())
            return false;
        if (states.Count is < 1 or > MostStates || count.Text != states.Count.ToString(CultureInfo.InvariantCulture))
            walk.Add(count.At, $"{name.Text} has {states.Count} states in braces, {count.Text} in brackets", "write the number of states, 1 to 1,000, and as many states", "network-form");
        foreach (var twice in states.GroupBy(s => s.Text, StringComparer.Ordinal).Where(g => g.Count() > 1))
            walk.Add(twice.Last().At, $"the state '{twice.Key}' stands there twice", "give each state a name of its own", "network-name");
        if (!places.TryAdd(name.Text, All.Count))
            walk.Add(name.At, $"'{name.Text}' is already a variable", "give one of the two another name", "network-name");
        All.Add(new(name.Text, [.. states.Select(s => s.Text)]));
        return true;
    }
}
