using CsCheck;
using Ramwright.Instruments.PeakLists;

namespace Ramwright.Instruments.Tests.PeakLists;

/// <summary>A series cut into overlapping lists is rebuilt, or refused: it never becomes another one.</summary>
public sealed class SplicePropertyTests
{
    /// <summary>A series over few letters (so that chance overlaps abound), and the lists that a memory shows of it.</summary>
    private static readonly Gen<(string Series, string[] Lists, int Depth, int?[] New)> s_cut =
        Gen.Select(Gen.Int[1, 8], Gen.Int[1, 4], Gen.Int[1, 20]).SelectMany((depth, letters, runs) =>
            Gen.Select(Gen.Char['a', (char)('a' + letters - 1)].Array[runs], Gen.Int[1, depth].Array[runs]).Select((series, steps) =>
            {
                var text = new string(series);
                var (lists, counts) = (new List<string>(), new List<int?>());
                for (int end = Math.Min(steps[0], runs), i = 1; ; i++)
                {
                    lists.Add(text[Math.Max(0, end - depth)..end]);
                    if (end == runs)
                        break;
                    var next = Math.Min(runs, end + Math.Min(steps[i], Math.Max(1, depth - 1))); // at least one reading stays shared, where the memory holds two
                    counts.Add(next - end);
                    end = next;
                }
                return (text, lists.ToArray(), depth, counts.ToArray());
            }));

    [Fact]
    public void It_is_rebuilt_exactly_or_refused() => s_cut.ForAll(cut =>
    {
        if (cut.Depth == 1)
            return; // such lists cannot overlap
        Holds(cut.Series, SpliceTests.Join(string.Join(' ', cut.Lists), ListOrder.OldestFirst));
        Holds(cut.Series, SpliceTests.Join(string.Join(' ', cut.Lists), ListOrder.OldestFirst, cut.Depth));
        Holds(cut.Series, SpliceTests.Join(string.Join(' ', cut.Lists), order: null));
    }, iter: 20_000);

    [Fact]
    public void With_every_number_of_new_runs_stated_it_is_always_rebuilt() => s_cut.ForAll(cut =>
    {
        Assert.Equal(cut.Series, SpliceTests.Letters(SpliceTests.Join(string.Join(' ', cut.Lists), ListOrder.OldestFirst, cut.Depth, [.. cut.New])));
        var newest = cut.Lists.Select(l => string.Concat(l.Reverse()));
        Assert.Equal(cut.Series, SpliceTests.Letters(SpliceTests.Join(string.Join(' ', newest), ListOrder.NewestFirst, cut.Depth, [.. cut.New])));
    }, iter: 5_000);

    [Fact]
    public void It_is_certain_exactly_when_trying_every_series_finds_one() => s_cut.ForAll(cut =>
    {
        if (cut.Depth == 1 || cut.Lists.Length > 5)
            return;
        var all = EverySeries(cut.Lists).Distinct(StringComparer.Ordinal).ToList();
        var answer = SpliceTests.Join(string.Join(' ', cut.Lists), ListOrder.OldestFirst);
        Assert.Equal(all.Count == 1, answer is Spliced.Whole);
        if (answer is Spliced.Ambiguous open)
            Assert.Equal(all.Select(s => s.Length).Distinct().Order(), open.Lengths);
    }, iter: 3_000);

    /// <summary>The slow way: every end for every list, each sign laid down and compared one by one.</summary>
    private static IEnumerable<string> EverySeries(string[] lists) => Laid(lists, 1, lists[0].Length, []);

    private static IEnumerable<string> Laid(string[] lists, int next, int end, List<int> ends)
    {
        if (next == lists.Length)
        {
            var signs = new SortedDictionary<int, char>();
            ends = [lists[0].Length, .. ends];
            for (var i = 0; i < lists.Length; i++)
            {
                for (var j = 0; j < lists[i].Length; j++)
                {
                    var at = ends[i] - lists[i].Length + j;
                    if (signs.TryGetValue(at, out var there) && there != lists[i][j])
                        yield break;
                    signs[at] = lists[i][j];
                }
            }
            yield return string.Concat(signs.Values);
            yield break;
        }
        for (var added = 0; added < lists[next].Length; added++)
        {
            foreach (var series in Laid(lists, next + 1, end + added, [.. ends, end + added]))
                yield return series;
        }
    }

    private static void Holds(string series, Spliced answer)
    {
        if (answer is Spliced.Whole)
            Assert.Equal(series, SpliceTests.Letters(answer));
        else
            Assert.True(answer is Spliced.Ambiguous or Spliced.OrderOpen or Spliced.TooManyWays, answer.ToString());
    }
}
