using System.Numerics;
using System.Runtime.InteropServices;

namespace Ramwright.Diagnosis.Faults;

/// <summary>Sums over subsets of open findings: cell S holds the weight of 'exactly these are explained so far'. All steps add and multiply what is not negative.</summary>
internal static class ExplainedSets
{
    /// <summary>Each set gains the finding of a bit with a probability: g(S ∪ d) += c·g(S), g(S) *= 1 − c.</summary>
    public static void Explain(Span<double> sets, int bit, double chance)
    {
        var half = 1 << bit;
        for (var from = 0; from < sets.Length; from += 2 * half)
            Explain(sets.Slice(from, half), sets.Slice(from + half, half), chance);
    }

    /// <summary>The transpose: b(S) = (1 − c)·b(S) + c·b(S ∪ d).</summary>
    public static void ExplainBack(Span<double> sets, int bit, double chance)
    {
        var half = 1 << bit;
        for (var from = 0; from < sets.Length; from += 2 * half)
            Blend(sets.Slice(from, half), sets.Slice(from + half, half), chance);
    }

    /// <summary>A new highest bit, explained by itself with the probability of the leak.</summary>
    public static double[] Open(double[] sets, double leak)
    {
        var wider = new double[2 * sets.Length];
        for (var s = 0; s < sets.Length; s++)
        {
            wider[s] = (1 - leak) * sets[s];
            wider[s + sets.Length] = leak * sets[s];
        }

        return wider;
    }

    /// <summary>The transpose of opening; weights are probabilities.</summary>
    public static double[] OpenBack(double[] sets, double leak)
    {
        var half = sets.Length / 2;
        var narrower = new double[half];
        for (var s = 0; s < half; s++)
            narrower[s] = (1 - leak) * sets[s] + leak * sets[s + half];
        return narrower;
    }

    /// <summary>Only sets with the bit are kept: the finding is there, and no fault is left to explain it.</summary>
    public static double[] Close(double[] sets, int bit)
    {
        var half = 1 << bit;
        var kept = new double[sets.Length / 2];
        for (var (from, to) = (half, 0); from < sets.Length; from += 2 * half, to += half)
            Array.Copy(sets, from, kept, to, half);
        return kept;
    }

    /// <summary>The transpose of closing; weights are probabilities.</summary>
    public static double[] CloseBack(double[] sets, int bit)
    {
        var half = 1 << bit;
        var wider = new double[2 * sets.Length];
        for (var (from, to) = (0, half); from < sets.Length; from += half, to += 2 * half)
            Array.Copy(sets, from, wider, to, half);
        return wider;
    }

    /// <summary>a·first + b·second, into the first.</summary>
    public static void Mix(Span<double> first, double a, ReadOnlySpan<double> second, double b)
    {
        var wide = MemoryMarshal.Cast<double, Vector<double>>(first);
        var wideSecond = MemoryMarshal.Cast<double, Vector<double>>(second);
        for (var i = 0; i < wide.Length; i++)
            wide[i] = a * wide[i] + b * wideSecond[i];
        for (var i = wide.Length * Vector<double>.Count; i < first.Length; i++)
            first[i] = a * first[i] + b * second[i];
    }

    /// <summary>The sum of products, a probability.</summary>
    public static double Dot(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        var wide = MemoryMarshal.Cast<double, Vector<double>>(first);
        var wideSecond = MemoryMarshal.Cast<double, Vector<double>>(second);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < wide.Length; i++)
            sums += wide[i] * wideSecond[i];
        var sum = Vector.Sum(sums);
        for (var i = wide.Length * Vector<double>.Count; i < first.Length; i++)
            sum += first[i] * second[i];
        return sum;
    }

    private static void Explain(Span<double> without, Span<double> with, double chance)
    {
        var wideWithout = MemoryMarshal.Cast<double, Vector<double>>(without);
        var wideWith = MemoryMarshal.Cast<double, Vector<double>>(with);
        var rest = 1 - chance;
        for (var i = 0; i < wideWithout.Length; i++)
        {
            wideWith[i] += chance * wideWithout[i];
            wideWithout[i] *= rest;
        }

        for (var i = wideWithout.Length * Vector<double>.Count; i < without.Length; i++)
        {
            with[i] += chance * without[i];
            without[i] *= rest;
        }
    }

    private static void Blend(Span<double> without, ReadOnlySpan<double> with, double chance) => Mix(without, 1 - chance, with, chance);
}
