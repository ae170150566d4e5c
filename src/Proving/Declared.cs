namespace Ramwright.Proving;

/// <summary>What was declared before the first run, beside the number of runs: whose scatter counts, and whether the series may be extended.</summary>
/// <remarks>An extension of a moderated series cannot be written: no factor is known that keeps the confidence of both.</remarks>
public abstract record Declared
{
    private Declared() { }

    /// <summary>The planned runs alone, judged by this tool's own scatter.</summary>
    public sealed record OwnScatter : Declared;

    /// <summary>So many more runs, 1 to 1,000, if and only if the planned ones leave the series undecided; then all runs together decide.</summary>
    public sealed record Extension(int MoreRuns) : Declared;

    /// <summary>The scatter moderated by earlier series of the model.</summary>
    public sealed record Moderated(EarlierSeries Earlier) : Declared;
}
