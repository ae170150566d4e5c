using CsCheck;

namespace Ramwright.Parts.Tests;

/// <summary>Picking from stock. First expired, first out is common practice; batches are invented.</summary>
public sealed class BatchPickTests
{
    private static readonly DateOnly s_today = new(2026, 3, 1);
    private static readonly Batch[] s_stock =
    [
        new("late", "S-1", 5, new(2027, 1, 1), new(2025, 1, 1)),
        new("soon", "S-1", 2, new(2026, 3, 1), new(2025, 6, 1)),
        new("gone", "S-1", 9, new(2026, 2, 28), new(2024, 1, 1)),
        new("ageless", "S-1", 4, null, new(2020, 1, 1)),
        new("other", "S-2", 4, null, new(2020, 1, 1)),
    ];

    [Theory]
    [InlineData(1, "soon 1")]
    [InlineData(4, "soon 2, late 2")]
    [InlineData(11, "soon 2, late 5, ageless 4")]
    [InlineData(0, "")]
    public void The_batch_that_expires_first_goes_first(int count, string picked) =>
        Assert.Equal(picked, string.Join(", ", Assert.IsType<BatchPick.Whole>(BatchPick.For("S-1", count, s_today, s_stock)).From.Select(t => $"{t.Batch.Id} {t.Count}")));

    [Fact]
    public void A_short_stock_says_what_is_missing_and_what_has_expired()
    {
        var pick = Assert.IsType<BatchPick.Short>(BatchPick.For("S-1", 13, s_today, s_stock));
        Assert.Equal((2, "gone"), (pick.Missing, Assert.Single(pick.Expired).Id));
    }

    [Fact]
    public void An_expired_batch_is_never_picked() =>
        Gen.Select(Gen.Int[0, 30], Gen.Select(Gen.Int[0, 9], Gen.Int[-20, 20]).Array[0, 8]).ForAll((count, batches) =>
        {
            var stock = batches.Select((b, i) => new Batch($"b{i}", "S-1", b.Item1, s_today.AddDays(b.Item2), s_today)).ToList();
            var usable = stock.Where(b => b.UsableThrough >= s_today).Sum(b => b.Count);
            var pick = BatchPick.For("S-1", count, s_today, stock);
            var from = pick is BatchPick.Whole whole ? whole.From : ((BatchPick.Short)pick).From;
            Assert.All(from, t => Assert.True(t.Batch.UsableThrough >= s_today && t.Count >= 1 && t.Count <= t.Batch.Count));
            Assert.Equal(Math.Min(count, usable), from.Sum(t => t.Count));
            Assert.Equal(count - Math.Min(count, usable), pick is BatchPick.Short s ? s.Missing : 0);
            Assert.True(from.Zip(from.Skip(1)).All(p => p.First.Batch.UsableThrough <= p.Second.Batch.UsableThrough));
        });

    [Fact]
    public void The_day_of_cure_counts_as_the_first() => Assert.Equal(new DateOnly(2026, 1, 10), Batch.LastDay(new(2026, 1, 1), TimeSpan.FromDays(10)));
}
