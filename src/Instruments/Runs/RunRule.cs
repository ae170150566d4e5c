using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Runs;

/// <summary>When pressures make a run: it begins above one pressure, is over below a lower one, and is full when its peak reaches a third.</summary>
public sealed record RunRule
{
    /// <exception cref="ArgumentOutOfRangeException">A caller's bug: the three do not rise from <paramref name="ends"/> over <paramref name="begins"/> to <paramref name="full"/>, or the lowest is not above zero.</exception>
    public RunRule(Pressure begins, Pressure ends, Pressure full)
    {
        if (!(ends.Pascals > 0 && begins > ends && full > begins))
            throw new ArgumentOutOfRangeException(nameof(begins), begins.Bar, $"A run ends ({ends.Bar} bar) below where it begins, and is full ({full.Bar} bar) above.");
        (Begins, Ends, Full) = (begins, ends, full);
    }

    public Pressure Begins { get; }

    public Pressure Ends { get; }

    public Pressure Full { get; }

    /// <summary>A run that takes longer is not taken: the device hangs, or the tool is held under pressure.</summary>
    public TimeSpan Longest { get; init; } = TimeSpan.FromSeconds(120);

    /// <summary>Fewer samples than this above <see cref="Begins"/> are a jump of the device, not a stroke.</summary>
    public int LeastSamples { get; init; } = 5;

    /// <summary>Gaps between samples in the upper fifth of the pressure may be this many times the usual interval, no more.</summary>
    public double WidestGapFactor { get; init; } = 5;
}
