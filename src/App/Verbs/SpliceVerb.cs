using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using Ramwright.App.CommandLine;
using Ramwright.Instruments;
using Ramwright.Instruments.PeakLists;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary><c>splice LIST…</c>: joins the overlapping peak lists of a tool's own memory to one series.</summary>
internal sealed class SpliceVerb : Verb
{
    private readonly Argument<string[]> _lists = new("LIST") { Description = "peak lists in the order in which they were read out: files (position,peak_bar), or typed in quotes such as \"701.2 698.4 703.0\"; - reads standard input, lists parted by an empty line", Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> _order = new("--order") { Description = "newest-first or oldest-first; when not given, the one that alone fits", HelpName = "ORDER" };
    private readonly Option<int?> _depth = new("--depth") { Description = "how many peaks the tool keeps; every list then is its whole memory", HelpName = "N" };
    private readonly Option<string?> _model = new("--model") { Description = "service model (file or bundled id) that states the depth of the memory", HelpName = "MODEL" };
    private readonly Option<string?> _new = new("--new") { Description = "runs made between the lists, where somebody counted them, such as 4,?,3", HelpName = "COUNTS" };
    private readonly Option<int> _shared = new("--least-shared") { Description = "readings that each list shares with those before it", HelpName = "N", DefaultValueFactory = _ => 1 };
    private readonly Option<string?> _unit = new("--unit") { Description = "unit of typed lists and of files without a header: bar, MPa, kPa or psi; bar when not given", HelpName = "UNIT" };

    public override string Name => "splice";

    public override string Summary => "joins the overlapping peak lists of a tool's own memory to one series, or says why it is not certain";

    public override IReadOnlyList<Example> Examples =>
    [
        new("splice \"703.0 698.4 701.2\" \"700.6 699.7 703.0 698.4\" --order newest-first", "two new runs; the series comes oldest first, fit for prove"),
        new("splice memory-1.csv memory-2.csv --depth 6", "the memory fills up: its length tells the new runs") { Files = ExampleFiles.PeakLists },
        new("splice \"700 700 700\" \"700 700 700\"", "equal readings in a row: how many runs are new?", Exit.Undecided),
        new("splice \"700 700 700\" \"700 700 700\" --new 2 --order newest-first", "somebody counted two: five runs"),
        new("splice \"701 698 703 700\" \"698 704 700 699\" --order oldest-first", "a reading that is not what it was", Exit.No),
    ];

    public override string ExitMeaning => "0 one series fits, 1 none does, 3 more than one does, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_lists, _order, _depth, _model, _new, _shared, _unit];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var unit = ReadUnit(given.GetValue(_unit), found);
        var depth = ReadDepth(given, found);
        ListOrder? order = given.GetValue(_order) switch { "newest-first" => ListOrder.NewestFirst, "oldest-first" => ListOrder.OldestFirst, _ => null };
        if (given.GetValue(_order) is { } word && order is null)
            found.Add(Usage("--order", $"'{word}' is no order", "write newest-first or oldest-first"));
        var shared = given.GetValue(_shared);
        if (shared < 1)
            found.Add(Usage("--least-shared", "lists that share nothing cannot be joined", "write 1 or more"));
        var lists = await PeakListInput.ReadAsync(given.GetValue(_lists)!, unit, found, cancel);
        var counts = ReadCounts(given.GetValue(_new), lists.Length, found);
        if (found.Count > 0)
            return Answer.Refused([.. found]);
        var spliced = Splice.Join(new SpliceQuestion { Lists = lists, Order = order, Depth = depth, NewRuns = counts, LeastShared = shared });
        if (spliced is Spliced.Whole whole)
            output.Say(SpliceText.Joins(whole));
        return new Answer(ExitOf(spliced), spliced is Spliced.Whole series ? Csv(series) : SpliceText.Of(spliced, lists), SpliceText.Json(spliced, lists));
    }

    private static Exit ExitOf(Spliced spliced) => spliced switch
    {
        Spliced.Whole => Exit.Yes,
        Spliced.Ambiguous or Spliced.OrderOpen or Spliced.TooManyWays => Exit.Undecided,
        _ => Exit.No,
    };

    private static string Csv(Spliced.Whole whole)
    {
        var text = new StringBuilder("run,peak_bar");
        for (var i = 0; i < whole.Series.Length; i++)
            text.Append(CultureInfo.InvariantCulture, $"\n{i + 1},{whole.Series[i].Bar:0.####}");
        return text.ToString();
    }

    private static ReadingUnit ReadUnit(string? symbol, List<Mistake> found)
    {
        if (symbol is null)
            return ReadingUnit.Bar;
        if (ReadingUnits.Find(symbol.Trim()) is { } unit and not ReadingUnit.Kilonewton)
            return unit;
        found.Add(Usage("--unit", $"'{symbol}' is no unit of a peak list", "write bar, MPa, kPa or psi"));
        return ReadingUnit.Bar;
    }

    private int? ReadDepth(ParseResult given, List<Mistake> found)
    {
        var depth = given.GetValue(_depth);
        if (depth is < 1 or > 10_000)
            found.Add(Usage("--depth", string.Create(CultureInfo.InvariantCulture, $"a memory of {depth} peaks"), "write 1 to 10,000"));
        if (given.GetValue(_model) is not { } name)
            return depth;
        if (depth is not null)
            found.Add(Usage("--depth", "both --depth and --model were given", "give one of the two: a model states its depth"));
        if (ModelArgument.Read(name, found) is not { } model)
            return null;
        if (model.Behaviour?.MemoryDepth is null)
            found.Add(Usage("--model", $"{model.Tool.Id} does not say how many peaks its tool keeps", "give --depth, or leave both out"));
        return model.Behaviour?.MemoryDepth;
    }

    private static ImmutableArray<int?> ReadCounts(string? text, int lists, List<Mistake> found)
    {
        if (text is null)
            return [];
        var counts = ImmutableArray.CreateBuilder<int?>();
        foreach (var word in text.Split(',', StringSplitOptions.TrimEntries))
        {
            if (word == "?")
                counts.Add(null);
            else if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var count))
                counts.Add(count);
            else
                found.Add(Usage("--new", $"'{word}' is no number of runs", "write whole numbers parted by commas, with ? where nobody counted"));
        }
        if (found.Count == 0 && counts.Count != lists - 1)
            found.Add(Usage("--new", string.Create(CultureInfo.InvariantCulture, $"{counts.Count} counts for {lists} lists"), "write one count for each list but the first, with ? where nobody counted"));
        return counts.ToImmutable();
    }

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}
