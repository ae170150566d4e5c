using CsCheck;
using Xunit.Sdk;

namespace Ramwright;

/// <summary>Properties tried on drawn cases, the same on every run and machine: a green test stays green until somebody changes the code or the draws.</summary>
internal static class DrawnCases
{
    /// <summary>Tries the property on <paramref name="iter"/> cases; <paramref name="seed"/> gives other ones.</summary>
    public static void ForAll<T>(this Gen<T> cases, Action<T> holds, int iter = 100, ulong seed = 1, Func<T, string>? print = null)
    {
        var chance = new PCG(1, seed);
        for (var at = 0; at < iter; at++)
        {
            var drawn = cases.Generate(chance, null, out _);
            try
            {
                holds(drawn);
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                throw new XunitException($"Case {at} of {iter} (seed {seed}): {(print ?? Check.Print)(drawn)}{Environment.NewLine}{failure.Message}", failure);
            }
        }
    }

    public static void ForAll<T>(this Gen<T> cases, Func<T, bool> holds, int iter = 100, ulong seed = 1, Func<T, string>? print = null) =>
        cases.ForAll(drawn => Assert.True(holds(drawn)), iter, seed, print);

    public static void ForAll<T1, T2>(this Gen<(T1 First, T2 Second)> cases, Action<T1, T2> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second), iter, seed);

    public static void ForAll<T1, T2>(this Gen<(T1 First, T2 Second)> cases, Func<T1, T2, bool> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second), iter, seed);

    public static void ForAll<T1, T2, T3>(this Gen<(T1 First, T2 Second, T3 Third)> cases, Action<T1, T2, T3> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third), iter, seed);

    public static void ForAll<T1, T2, T3>(this Gen<(T1 First, T2 Second, T3 Third)> cases, Func<T1, T2, T3, bool> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third), iter, seed);

    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth)> cases, Action<T1, T2, T3, T4> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third, drawn.Fourth), iter, seed);

    public static void ForAll<T1, T2, T3, T4>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth)> cases, Func<T1, T2, T3, T4, bool> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third, drawn.Fourth), iter, seed);

    public static void ForAll<T1, T2, T3, T4, T5>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth, T5 Fifth)> cases, Action<T1, T2, T3, T4, T5> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third, drawn.Fourth, drawn.Fifth), iter, seed);

    public static void ForAll<T1, T2, T3, T4, T5>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth, T5 Fifth)> cases, Func<T1, T2, T3, T4, T5, bool> holds, int iter = 100, ulong seed = 1) =>
        cases.ForAll(drawn => holds(drawn.First, drawn.Second, drawn.Third, drawn.Fourth, drawn.Fifth), iter, seed);
}
