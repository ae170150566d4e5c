using System.Collections.Immutable;

namespace Ramwright.Parts;

/// <summary>What to take from stock, batch by batch: first expired, first out; never an expired one.</summary>
public abstract record BatchPick
{
    private BatchPick() { }

    /// <summary>So many from each, in the order to take them.</summary>
    public sealed record Whole(ImmutableArray<Taken> From) : BatchPick;

    /// <summary>The stock does not reach. <paramref name="Expired"/> holds the batches that would have helped but are past their day: to be thrown away.</summary>
    public sealed record Short(ImmutableArray<Taken> From, int Missing, ImmutableArray<Batch> Expired) : BatchPick;

    /// <summary>So many pieces from one batch.</summary>
    public sealed record Taken(Batch Batch, int Count);

    /// <summary>Picks <paramref name="count"/> pieces of a number for fitting on a day.</summary>
    /// <remarks>Order: the batch that expires first, what does not age last; at the same day the one received first, then by id.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count below zero.</exception>
    public static BatchPick For(string number, int count, DateOnly on, IEnumerable<Batch> stock)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var ofNumber = stock.Where(b => b.Number == number && b.Count > 0).ToList();
        var from = ImmutableArray.CreateBuilder<Taken>();
        var missing = count;
        foreach (var batch in ofNumber.Where(b => b.UsableOn(on))
                     .OrderBy(b => b.UsableThrough ?? DateOnly.MaxValue).ThenBy(b => b.Received).ThenBy(b => b.Id, StringComparer.Ordinal))
        {
            if (missing == 0)
                break;
            var take = Math.Min(missing, batch.Count);
            from.Add(new(batch, take));
            missing -= take;
        }
        return missing == 0
            ? new Whole(from.ToImmutable())
            : new Short(from.ToImmutable(), missing, [.. ofNumber.Where(b => !b.UsableOn(on))]);
    }
}
