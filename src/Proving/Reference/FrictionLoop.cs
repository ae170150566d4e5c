using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Screens;

namespace Ramwright.Proving.Reference;

/// <summary>The force at one pressure, reached from below and then from above.</summary>
public readonly record struct ForcePair(Force Up, Force Down);

/// <summary>What loading up and down says about the friction of the ram.</summary>
/// <remarks>
/// Friction works against the motion: rising, the jaws get pA − spring − friction; falling, pA − spring + friction. At one pressure half the difference
/// of the two is the friction. Balance of forces; no inertia, so the pressure is held at each reading.
/// </remarks>
public abstract record FrictionLoop
{
    /// <summary>Fewer loops say nothing of how well the friction is known.</summary>
    public const int FewestLoops = 3;

    /// <summary>More loops than these are not taken.</summary>
    public const int MostLoops = 100;

    private FrictionLoop() { }

    /// <summary>The friction, and how well it is known.</summary>
    /// <param name="Friction">Mean of the halves of all loops.</param>
    /// <param name="Standard">Standard uncertainty of that mean (JCGM 100:2008, 4.2.3).</param>
    /// <param name="Loops">How many loops.</param>
    public sealed record Shown(Force Friction, Force Standard, int Loops) : FrictionLoop;

    /// <summary>Fewer than <see cref="FewestLoops"/>.</summary>
    public sealed record TooFew(int Loops) : FrictionLoop;

    /// <summary>The force on the way down is no larger than on the way up: the two were swapped, or the pressure was not the same.</summary>
    /// <param name="Loop">Which loop, from 1.</param>
    public sealed record NotAgainstMotion(int Loop) : FrictionLoop;

    /// <param name="loops">At most <see cref="MostLoops"/>.</param>
    public static FrictionLoop Of(ImmutableArray<ForcePair> loops)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(loops.Length, MostLoops, nameof(loops));
        if (loops.Length < FewestLoops)
            return new TooFew(loops.Length);
        for (var i = 0; i < loops.Length; i++)
        {
            if (loops[i].Down <= loops[i].Up)
                return new NotAgainstMotion(i + 1);
        }

        var moments = Moments.Of([.. loops.Select(l => 0.5 * (l.Down - l.Up).Newtons)]);
        return new Shown(Force.FromNewtons(moments.Mean), Force.FromNewtons(moments.StandardDeviation / Math.Sqrt(loops.Length)), loops.Length);
    }
}
