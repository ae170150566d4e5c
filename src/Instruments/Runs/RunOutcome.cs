using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Runs;

/// <summary>What became of a run.</summary>
public abstract record RunOutcome
{
    private RunOutcome() { }

    /// <summary>It was full, and this is its peak.</summary>
    public sealed record Full(PeakEstimate Peak) : RunOutcome;

    /// <summary>It counts for nothing, for this reason.</summary>
    /// <param name="Highest">Its highest reading, where there was one.</param>
    public sealed record NotTaken(WhyNotTaken Why, Pressure? Highest) : RunOutcome;
}

/// <summary>Why a run was not taken; none of them looks at how good its peak is.</summary>
public enum WhyNotTaken
{
    /// <summary>Its peak stayed below that of a full run: the trigger was let go, or the tool has no strength.</summary>
    ShortOfFull,

    /// <summary>The device was lost while it went on.</summary>
    Interrupted,

    /// <summary>It was under way when the device was reached.</summary>
    BeginningNotSeen,

    /// <summary>Readings are missing where the pressure was high, so the peak may be among them.</summary>
    Gap,

    /// <summary>A few readings jumped up and down again: no stroke does that.</summary>
    Jump,

    /// <summary>It did not end in the time that a run takes: the device hangs, or the tool is held.</summary>
    TooLong,
}
