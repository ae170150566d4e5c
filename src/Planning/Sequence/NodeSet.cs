using System.Numerics;

namespace Ramwright.Planning.Sequence;

/// <summary>A set of small numbers as bits. Treated as a value: once shared it is not written to again.</summary>
internal readonly struct NodeSet(ulong[] words) : IEquatable<NodeSet>
{
    private readonly ulong[] words = words;

    public static NodeSet Empty(int capacity) => new(new ulong[Math.Max(1, (capacity + 63) / 64)]);

    public bool this[int index] => (words[index >> 6] >> (index & 63) & 1) != 0;

    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in words)
                count += BitOperations.PopCount(word);
            return count;
        }
    }

    public void Add(int index) => words[index >> 6] |= 1UL << (index & 63);

    public NodeSet Copy() => new((ulong[])words.Clone());

    public void CopyTo(NodeSet other) => words.CopyTo(other.words, 0);

    public void Clear() => Array.Clear(words);

    public void UnionWith(NodeSet other)
    {
        for (var i = 0; i < words.Length; i++)
            words[i] |= other.words[i];
    }

    public void IntersectWith(NodeSet other)
    {
        for (var i = 0; i < words.Length; i++)
            words[i] &= other.words[i];
    }

    public bool IsSubsetOf(NodeSet other)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if ((words[i] & ~other.words[i]) != 0)
                return false;
        }

        return true;
    }

    /// <summary>The members in rising order.</summary>
    public Members GetEnumerator() => new(words);

    public bool Equals(NodeSet other) => words.AsSpan().SequenceEqual(other.words);

    public override bool Equals(object? obj) => obj is NodeSet other && Equals(other);

    public override int GetHashCode()
    {
        var hash = 0x9E3779B97F4A7C15UL;
        foreach (var word in words)
        {
            hash = (hash ^ word) * 0xD6E8FEB86659FD93UL;
            hash ^= hash >> 32;
        }

        return (int)hash;
    }

    /// <summary>Walks through the members.</summary>
    internal struct Members(ulong[] words)
    {
        private int word;
        private ulong rest = words[0];

        public int Current { get; private set; }

        public bool MoveNext()
        {
            while (rest == 0)
            {
                if (++word >= words.Length)
                    return false;
                rest = words[word];
            }

            Current = (word << 6) + BitOperations.TrailingZeroCount(rest);
            rest &= rest - 1;
            return true;
        }
    }
}
