using System.Collections.Immutable;
using Ramwright.Metrology.Text;

namespace Ramwright.Proving.Text;

/// <summary>A verdict in words: the answer first, what it rests on under it.</summary>
public static class VerdictText
{
    /// <summary><c>conforms</c>, <c>does not conform</c> or <c>undecided</c>.</summary>
    public static string Word(Conformity conformity) => throw new NotSupportedException("Not written yet.");

    /// <summary>The answer and its main reason: <c>undecided: the scatter is too large for 12 runs</c>.</summary>
    public static string Headline(Verdict verdict, UnitSystem units) => throw new NotSupportedException("Not written yet.");

    /// <summary>The lines under the headline: figures, claims, further reasons, flags.</summary>
    public static ImmutableArray<string> Lines(Verdict verdict, ProofSeries series, UnitSystem units) => throw new NotSupportedException("Not written yet.");
}
