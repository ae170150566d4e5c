using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>What a text holds: a recording, a question that only a person can answer, or all that is wrong.</summary>
public abstract record RecordingAnswer
{
    private RecordingAnswer() { }

    /// <summary>The recording, and all that was assumed, left out or corrected on the way, in the order of its weight.</summary>
    public sealed record Taken(Recording Recording, ImmutableArray<RecordingNote> Notes) : RecordingAnswer;

    /// <summary>Several columns could be it; <see cref="RecordingOptions"/> takes one of the names (or its number, the first column being 1).</summary>
    public sealed record WhichColumn(RecordingSignal Signal, ImmutableArray<string> Names) : RecordingAnswer;

    /// <summary>Nothing was taken; the mistakes stand in the order of the text.</summary>
    public sealed record Refused(ImmutableArray<Mistake> Mistakes) : RecordingAnswer;
}

/// <summary>What a column of a recording can hold.</summary>
public enum RecordingSignal { Time, Pressure, Current }
