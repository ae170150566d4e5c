using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Networks;

/// <summary>A network read from text, or all that is wrong with it.</summary>
public abstract record NetworkReading
{
    private NetworkReading() { }

    public sealed record Read(BayesNetwork Network) : NetworkReading;

    public sealed record Refused(ImmutableArray<Mistake> Mistakes) : NetworkReading;
}
