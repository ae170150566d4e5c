using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Instruments.PeakLists;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.PeakLists;

/// <summary>Peak lists that overlap become one series, or it is said why not. Readings are invented; letters stand for them where only equality counts.</summary>
public sealed class SpliceTests
{
    [Theory]
    [InlineData("abcd cdef defg", "abcdefg")] // two shared, then three
    [InlineData("abc cde", "abcde")] // one shared
    [InlineData("abcd abcd bcde", "abcde")] // read out twice without a run between
    [InlineData("ab abcd cdef", "abcdef")] // the memory fills up
    [InlineData("bc abcd cde", "abcde")] // a list copied in part: the next one reaches further back
    public void One_series_that_fits_is_the_series(string lists, string series)
    {
        Assert.Equal(series, Letters(Join(lists, ListOrder.OldestFirst)));
        Assert.Equal(series, Letters(Join(Reversed(lists), ListOrder.NewestFirst)));
    }

    [Fact]
    public void A_later_list_settles_what_an_earlier_join_left_open() =>
        Assert.Equal("xaaay", Letters(Join("xaa aa xaaay", ListOrder.OldestFirst))); // behind the second list alone, 'xaa' fits too

    [Fact]
    public void Equal_readings_in_a_row_need_the_number_of_new_runs()
    {
        var open = Assert.IsType<Spliced.Ambiguous>(Join("aaa aaa", ListOrder.OldestFirst));
        Assert.Equal([0, 1, 2], open.PossibleNewRuns);
        Assert.Equal([3, 4, 5], open.Lengths);
        Assert.Equal("aaaaa", Letters(Join("aaa aaa", ListOrder.OldestFirst, newRuns: [2])));
        Assert.Equal("aaaaaa", Letters(Join("aaa aaa", ListOrder.OldestFirst, newRuns: [3]))); // none shared, none missing
    }

    [Fact]
    public void A_pattern_that_returns_is_ambiguous_too() =>
        Assert.Equal([1, 4], Assert.IsType<Spliced.Ambiguous>(Join("abcabc bcabcd", ListOrder.OldestFirst)).PossibleNewRuns);

    [Fact]
    public void Known_depth_tells_how_many_runs_are_new_while_the_memory_fills()
    {
        Assert.Equal("aaaa", Letters(Join("aa aaaa", ListOrder.OldestFirst, depth: 6)));
        Assert.IsType<Spliced.Ambiguous>(Join("aa aaaa", ListOrder.OldestFirst, depth: 4)); // now it is full: two or more are new
        Assert.Equal(new Spliced.NotWholeMemory(1, 2, 4), Join("abc bc", ListOrder.OldestFirst, depth: 4));
        Assert.Equal(new Spliced.NotWholeMemory(0, 3, 2), Join("abc", ListOrder.OldestFirst, depth: 2));
    }

    [Fact]
    public void A_list_that_differs_in_one_reading_is_shown_with_it()
    {
        var differs = Assert.IsType<Spliced.Contradicts>(Join("abcdef bcxefg", ListOrder.OldestFirst));
        Assert.Equal((1, 1, 4), (differs.List, differs.NewRuns, differs.Agreeing));
        Assert.Equal(new Difference(3, Reading('d'), Reading('x')), Assert.Single(differs.Differing));
        var newest = Assert.IsType<Spliced.Contradicts>(Join("fedcba gfexcb", ListOrder.NewestFirst));
        Assert.Equal(4, Assert.Single(newest.Differing).Position); // as the tool shows it
    }

    [Fact]
    public void Lists_without_a_shared_reading_are_apart_and_stated_runs_may_leave_a_gap()
    {
        Assert.Equal(new Spliced.Apart(1), Join("abc def", ListOrder.OldestFirst));
        Assert.Equal("abcdef", Letters(Join("abc def", ListOrder.OldestFirst, newRuns: [3])));
        Assert.Equal(new Spliced.Gap(1, 2), Join("abc def", ListOrder.OldestFirst, newRuns: [5]));
    }

    [Fact]
    public void Stated_runs_that_do_not_fit_are_a_contradiction() =>
        Assert.Equal(2, Assert.IsType<Spliced.Contradicts>(Join("abcd bcde", ListOrder.OldestFirst, newRuns: [2])).NewRuns);

    [Fact]
    public void Without_a_stated_order_the_one_that_fits_is_found()
    {
        var found = Assert.IsType<Spliced.Whole>(Join("dcba fedc", order: null));
        Assert.Equal((ListOrder.NewestFirst, "abcdef"), (found.Order, Letters(found)));
        Assert.Equal(ListOrder.OldestFirst, Assert.IsType<Spliced.Whole>(Join("abcd cdef", order: null)).Order);
        Assert.IsType<Spliced.OrderOpen>(Join("abc cda", order: null)); // either end may be the shared one
        Assert.IsType<Spliced.OrderOpen>(Join("abc", order: null)); // one list alone tells nothing
    }

    [Fact]
    public void Places_say_on_how_many_readings_each_join_rests()
    {
        var whole = Assert.IsType<Spliced.Whole>(Join("abcd cdef fgh", ListOrder.OldestFirst));
        Assert.Equal([new("1", 1, 4, 4, 0), new("2", 3, 6, 2, 2), new("3", 6, 8, 2, 1)], whole.Places);
    }

    [Fact]
    public void More_ways_than_can_be_followed_are_an_answer()
    {
        var same = new PeakList("long", [.. Enumerable.Repeat(Reading('a'), 5_000)]);
        Assert.Equal(new Spliced.TooManyWays(1), Splice.Join(new SpliceQuestion { Lists = [same, same], Order = ListOrder.OldestFirst }));
    }

    [Fact]
    public void A_bug_in_the_caller_throws()
    {
        Assert.Throws<ArgumentException>(() => Splice.Join(new SpliceQuestion { Lists = [] }));
        Assert.Throws<ArgumentException>(() => Join("ab bc", ListOrder.OldestFirst, newRuns: [1, 1]));
        Assert.Throws<ArgumentException>(() => new PeakList("none", []));
    }

    internal static Spliced Join(string lists, ListOrder? order, int? depth = null, ImmutableArray<int?>? newRuns = null) => Splice.Join(new SpliceQuestion
    {
        Lists = [.. lists.Split(' ').Select((l, i) => new PeakList((i + 1).ToString(CultureInfo.InvariantCulture), [.. l.Select(Reading)]))],
        Order = order,
        Depth = depth,
        NewRuns = newRuns ?? [],
    });

    internal static string Letters(Spliced answer) =>
        string.Concat(Assert.IsType<Spliced.Whole>(answer).Series.Select(p => (char)('a' + (int)Math.Round((p.Bar - 690) / 1.1))));

    private static Pressure Reading(char letter) => Pressure.FromBar(690 + (1.1 * (letter - 'a')));

    private static string Reversed(string lists) => string.Join(' ', lists.Split(' ').Select(l => string.Concat(l.Reverse())));
}
