using System.Runtime.Intrinsics;

namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Random numbers of one block of trials: four interleaved streams, the same bits for the same seed and block on every machine.</summary>
/// <remarks>
/// xoshiro256++ of D. Blackman &amp; S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) 36; period 2^256 − 1.
/// Each block starts from SplitMix64 (G. Steele et al., OOPSLA 2014) of seed and block number: two of a million blocks overlap with chance below 1e-50.
/// </remarks>
internal sealed class RandomStream
{
    private Vector256<ulong> a, b, c, d;

    public RandomStream(ulong seed, ulong block)
    {
        var state = Mixed(Mixed(seed) + block);
        Span<ulong> start = stackalloc ulong[16];
        foreach (ref var word in start)
            word = Mixed(state += 0x9E3779B97F4A7C15);
        (a, b, c, d) = (Vector256.Create(start), Vector256.Create(start[4..]), Vector256.Create(start[8..]), Vector256.Create(start[12..]));
    }

    /// <summary>For a test against published output: four streams from the same state.</summary>
    internal RandomStream(ulong a, ulong b, ulong c, ulong d) =>
        (this.a, this.b, this.c, this.d) = (Vector256.Create(a), Vector256.Create(b), Vector256.Create(c), Vector256.Create(d));

    /// <summary>The next 64 bits of each stream.</summary>
    public Vector256<ulong> Bits()
    {
        var sum = a + d;
        var bits = ((sum << 23) | (sum >>> 41)) + a;
        var t = b << 17;
        c ^= a;
        d ^= b;
        b ^= c;
        a ^= d;
        c ^= t;
        d = (d << 45) | (d >>> 19);
        return bits;
    }

    /// <summary>Four numbers above 0 and below 1, odd multiples of 2^−53.</summary>
    public Vector256<double> Shares()
    {
        var oneToTwo = ((Bits() >>> 12) | Vector256.Create(0x3FF0000000000000UL)).AsDouble();
        return oneToTwo - Vector256.Create(1 - 1.1102230246251565e-16);
    }

    private static ulong Mixed(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
        return x ^ (x >> 31);
    }
}
