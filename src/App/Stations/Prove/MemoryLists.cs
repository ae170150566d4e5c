using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Verbs;
using Ramwright.App.Web.Parts;
using Ramwright.Instruments;
using Ramwright.Instruments.PeakLists;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Prove;

/// <summary>Lists of peaks read out of a tool's memory, as they are pasted, and the runs of a series among them.</summary>
public sealed class MemoryLists
{
    /// <summary>One list after the other, an empty line between.</summary>
    public string? Lists { get; set; }

    /// <summary><c>newest-first</c>, <c>oldest-first</c>, or empty.</summary>
    public string? Order { get; set; }

    /// <summary>New runs from each list to the next, where somebody counted them.</summary>
    public string? New { get; set; }

    /// <summary>How many of the latest peaks are runs of the series.</summary>
    public string? Count { get; set; }

    /// <summary>The runs that the series does not have yet, or nothing with every mistake noted.</summary>
    /// <param name="depth">Peaks that the tool keeps; null when the model does not say.</param>
    public ImmutableArray<GivenRun> Read(SeriesState series, int? depth, string unit, FormMistakes mistakes)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(mistakes);
        List<Mistake> found = [];
        var lists = PeakListInput.ReadPasted(Lists ?? "", unit == "psi" ? ReadingUnit.Psi : ReadingUnit.Bar, found);
        foreach (var mistake in found)
            mistakes.Add("lists", Sentence.Of(string.Create(CultureInfo.InvariantCulture, $"{mistake.At.File}{(mistake.At.Line > 0 ? $", line {mistake.At.Line}" : "")}: {mistake.What}")), Sentence.Of(mistake.Mend));
        var added = NewRuns(lists.Length, mistakes);
        if (!int.TryParse((Count ?? "").Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > 1000)
            mistakes.Add("count", "How many of these peaks are runs of the series is not said.", "Count the full runs made since the series was opened; setting runs are none of them.");
        if (mistakes.Count > 0)
            return [];
        var question = new SpliceQuestion { Lists = lists, Depth = depth, NewRuns = added, Order = Order switch { "newest-first" => ListOrder.NewestFirst, "oldest-first" => ListOrder.OldestFirst, _ => null } };
        if (Splice.Join(question) is not Spliced.Whole whole)
        {
            var words = SpliceText.Of(Splice.Join(question), lists).Replace("give them as --new", "write them under 'new runs'", StringComparison.Ordinal)
                .Replace("give the number of new runs as --new", "write the number of new runs", StringComparison.Ordinal)
                .Replace("--order newest-first or --order oldest-first", "newest first or oldest first", StringComparison.Ordinal)
                .Replace(", or leave --depth out", "", StringComparison.Ordinal).Split('\n');
            mistakes.Add("lists", Sentence.Of(Sentence.Head(words[0])), string.Join(" ", words.Skip(1).Select(w => Sentence.Of(Sentence.Head(w.Trim())))));
            return [];
        }

        return Runs(series, whole.Series, count, mistakes);
    }

    private static ImmutableArray<GivenRun> Runs(SeriesState series, ImmutableArray<Pressure> spliced, int count, FormMistakes mistakes)
    {
        var taken = series.Runs.Select(r => r.Taken.What.Shown ?? r.Taken.What.Peak).ToImmutableArray();
        if (count > spliced.Length || count <= taken.Length)
        {
            mistakes.Add("count", count > spliced.Length
                ? string.Create(CultureInfo.InvariantCulture, $"{count} runs were made, and the lists hold {spliced.Length} peaks.")
                : string.Create(CultureInfo.InvariantCulture, $"The series has {taken.Length} runs already, and {count} were made since it was opened: nothing is new."),
                count > spliced.Length ? "Add the list that was read out before." : "Count again, those taken already included.");
            return [];
        }

        var runs = spliced[^count..];
        for (var i = 0; i < taken.Length; i++)
        {
            if (Math.Abs((runs[i] - taken[i]).Pascals) > 1)
            {
                mistakes.Add("lists", string.Create(CultureInfo.InvariantCulture, $"Run {i + 1} stands in the series with {taken[i].Bar:0.#} bar and in the lists with {runs[i].Bar:0.#} bar."), "Look at the tool again: the count may be off, or a list was written down wrongly.");
                return [];
            }
        }

        return [.. runs[taken.Length..].Select(p => new GivenRun(p, null, RunSource.Memory))];
    }

    private ImmutableArray<int?> NewRuns(int lists, FormMistakes mistakes)
    {
        var words = (New ?? "").Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length == 0)
            return [];
        ImmutableArray<int?> numbers = [.. words.Select(w => int.TryParse(w, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n <= 10_000 ? n : (int?)null)];
        if (numbers.Any(n => n is null) || numbers.Length != Math.Max(0, lists - 1))
            mistakes.Add("new", "The new runs do not belong to the lists.", string.Create(CultureInfo.InvariantCulture, $"Write one number for each list but the first, {Math.Max(0, lists - 1)} in all, or leave it empty."));
        return numbers;
    }
}
