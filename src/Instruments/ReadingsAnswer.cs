using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Instruments;

/// <summary>What a text of readings holds: every reading of it, or none and all that is wrong.</summary>
public abstract record ReadingsAnswer
{
    private ReadingsAnswer() { }

    /// <summary>The valid readings, at least one, in the order of the text.</summary>
    public sealed record Taken(ImmutableArray<Reading> Readings) : ReadingsAnswer
    {
        /// <summary>Runs that the text marks void with a cause.</summary>
        public ImmutableArray<VoidReading> Void { get; init; } = [];

        /// <summary>The unit the text was written in.</summary>
        public required ReadingUnit Unit { get; init; }

        /// <summary>Whether no unit was stated anywhere and <see cref="ReadingsOptions.AssumedUnit"/> was taken.</summary>
        public bool UnitAssumed { get; init; }
    }

    /// <summary>Nothing was taken; the mistakes stand in the order of the text.</summary>
    public sealed record Refused(ImmutableArray<Mistake> Mistakes) : ReadingsAnswer;
}
