using System.Collections.Concurrent;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Proving;

/// <summary>Tolerance factors, each computed once: a series asks for the same few again and again.</summary>
internal static class Factors
{
    private const int Most = 4_096; // a shop meets a few dozen; beyond, compute anew

    private static readonly ConcurrentDictionary<(bool TwoSided, int Runs, double Coverage, double Confidence), double> Known = new();

    private static readonly ConcurrentDictionary<(int First, int More, double Coverage, double Confidence), (double Accepting, double Refusing)> Looks = new();

    /// <summary>In standard deviations.</summary>
    public static double OneSided(int runs, double coverage, double confidence) => Get((false, runs, coverage, confidence));

    /// <summary>In standard deviations.</summary>
    public static double TwoSided(int runs, double coverage, double confidence) => Get((true, runs, coverage, confidence));

    /// <summary>Below this distance from a limit, in standard deviations, the share beyond it is shown to be too large.</summary>
    public static double Refusing(int runs, double coverage, double confidence) => OneSided(runs, coverage, 1 - confidence);

    /// <summary>The confidences of each of two looks that keep the asked one of both together, for claims and for refusals.</summary>
    public static (double Accepting, double Refusing) OfEachLook(int first, int more, double coverage, double confidence)
    {
        var key = (first, more, coverage, confidence);
        if (Looks.TryGetValue(key, out var known))
            return known;
        var each = (TwoLooks.ConfidenceOfEach(first, more, coverage, confidence), TwoLooks.ConfidenceOfEach(first, more, 1 - coverage, confidence));
        if (Looks.Count < Most)
            Looks.TryAdd(key, each);
        return each;
    }

    private static double Get((bool TwoSided, int Runs, double Coverage, double Confidence) key)
    {
        if (Known.TryGetValue(key, out var known))
            return known;
        var factor = key.TwoSided
            ? ToleranceFactor.TwoSided(key.Runs, key.Coverage, key.Confidence)
            : ToleranceFactor.OneSided(key.Runs, key.Coverage, key.Confidence);
        if (Known.Count < Most)
            Known.TryAdd(key, factor);
        return factor;
    }
}
