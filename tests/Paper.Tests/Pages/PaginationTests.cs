using System.Collections.Immutable;
using CsCheck;
using Ramwright.Paper.Pages;

namespace Ramwright.Paper.Tests.Pages;

public sealed class PaginationTests
{
    private sealed class Block(double height) : Piece
    {
        public override double Height => height;

        public override void Draw(Canvas canvas, double x, double y) => throw new InvalidOperationException("Nothing is drawn here.");
    }

    private static int[] Counts(double room, params ImmutableArray<Piece> pieces) => [.. Pagination.Split(pieces, room, room).Select(p => p.Length)];

    [Fact]
    public void Keeps_a_heading_with_what_follows() =>
        Assert.Equal([1, 2], Counts(100, new Block(60), new Block(30) { KeepWithNext = true }, new Block(30)));

    [Fact]
    public void Repeats_the_head_of_a_table()
    {
        var head = new Block(20) { KeepWithNext = true };
        var pages = Pagination.Split([head, new Block(50) { RepeatAtTop = head }, new Block(50) { RepeatAtTop = head }], 100, 100);
        Assert.Equal([2, 2], pages.Select(p => p.Length));
        Assert.Same(head, pages[1][0]);
    }

    [Fact]
    public void Drops_space_at_the_top_of_a_page() => Assert.Equal([1, 1], Counts(100, new Block(95), new SpacePiece(20), new Block(50)).Select(n => Math.Min(n, 1)));

    [Fact]
    public void Breaks_where_told_and_leaves_no_empty_page() => Assert.Equal([1, 1], Counts(100, new Block(10), new PageBreakPiece(), new SpacePiece(5), new Block(10)));

    [Fact]
    public void Gives_a_page_to_what_is_higher_than_one() => Assert.Equal([1, 1, 1], Counts(100, new Block(10), new Block(500), new Block(10)));

    [Fact]
    public void Nothing_is_still_a_page() => Assert.Equal([0], Counts(100));

    [Fact]
    public void Every_piece_stands_once_and_no_page_overflows() => Gen.Select(Gen.Int[1, 80], Gen.Bool, Gen.Bool).Array[0, 40].ForAll(seeds =>
    {
        ImmutableArray<Piece> pieces = [.. seeds.Select(s => (Piece)(s.Item3 ? new SpacePiece(s.Item1 / 4.0) : new Block(s.Item1) { KeepWithNext = s.Item2 }))];
        var pages = Pagination.Split(pieces, 80, 100);
        var blocks = pieces.Where(p => !p.IsSpace).ToList();
        return pages.SelectMany(p => p).Where(p => !p.IsSpace).SequenceEqual(blocks)
            && pages.Select((p, i) => p.Sum(x => x.Height) <= (i == 0 ? 80 : 100) + 0.01 || p.Count(x => !x.IsSpace) <= 1).All(fits => fits);
    });
}
