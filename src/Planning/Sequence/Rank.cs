namespace Ramwright.Planning.Sequence;

/// <summary>Which search node is looked at next: the lowest total; of equals the one nearest to the end; of those the one found first.</summary>
internal readonly record struct Rank(long Total, long Rest, int Found)
{
    public static readonly Comparer<Rank> Order = Comparer<Rank>.Create(static (a, b) =>
        a.Total != b.Total ? a.Total.CompareTo(b.Total) : a.Rest != b.Rest ? a.Rest.CompareTo(b.Rest) : a.Found.CompareTo(b.Found));
}
