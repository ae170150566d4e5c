using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Faults;

/// <summary>An observation whose values are ranked, of which the strongest that any fault brings is seen: a leaky noisy-MAX.</summary>
/// <remarks>
/// F(value ≤ k | faults) = F₀(k) · Π Fᵢ(k) over the faults present (M. Henrion, UAI 1987; F. J. Díez, UAI 1993; from memory). Seeing exactly k is 'none above k' times
/// 'at least one at k': likelihood ratios for each fault by itself, and a present finding. With one fault alone the stated shares come out
/// as stated, unless a fault is said to make a stronger outcome rarer than in a sound tool; then it counts as without influence there.
/// </remarks>
internal static class OrderedOutcome
{
    /// <summary>Puts 'the value lies in the step from lower to upper' into the problem.</summary>
    /// <param name="sound">F of a sound tool below the step and at its top, probabilities.</param>
    /// <param name="faults">The same of a tool with this fault alone.</param>
    public static void Put(NoisyOr problem, (double Lower, double Upper) sound, IEnumerable<(int Fault, double Lower, double Upper)> faults)
    {
        var causes = ImmutableArray.CreateBuilder<(int, double)>();
        foreach (var (fault, lower, upper) in faults)
        {
            var at = Math.Min(1, upper / sound.Upper);
            var below = sound.Lower > 0 ? Math.Min(at, lower / sound.Lower) : 0;
            problem.Weigh(fault, at);
            if (at > 0 && sound.Lower > 0)
                causes.Add((fault, 1 - below / at));
        }

        problem.LogConstant += Math.Log(sound.Upper);
        if (sound.Lower > 0)
            problem.Positives.Add(new((sound.Upper - sound.Lower) / sound.Upper, causes.ToImmutable()));
    }
}
