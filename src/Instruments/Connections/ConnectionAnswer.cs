using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Instruments.Connections;

/// <summary>What a connection text says, or all that is wrong with it.</summary>
public abstract record ConnectionAnswer
{
    private ConnectionAnswer() { }

    public sealed record Read(Connection Connection) : ConnectionAnswer;

    /// <summary>The mistakes in the order of the text, at least one.</summary>
    public sealed record Refused(ImmutableArray<Mistake> Mistakes) : ConnectionAnswer;
}
