namespace Ramwright.Metrology.Input;

/// <summary>A place in a text file; line and column count from 1 as editors count, length in characters (0: the whole line).</summary>
public readonly record struct Place(string File, int Line, int Column, int Length);

/// <summary>Something wrong in what was given: where, what is wrong, how to mend it, and the code that <c>ramwright explain</c> takes.</summary>
public sealed record Mistake(Place At, string What, string Mend, string Code)
{
    /// <summary>The line the place points to, for the excerpt; null when there is none to show.</summary>
    public string? Excerpt { get; init; }
}
