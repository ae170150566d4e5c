using System.Collections.Immutable;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>What stands in a table's cell.</summary>
public abstract record Cell
{
    private Cell() { }

    public sealed record Text(ImmutableArray<Span> Spans) : Cell;

    /// <summary>A box to tick, with a word beside it.</summary>
    public sealed record Tick(string? Word = null) : Cell;

    /// <summary>Empty boxes to write a value into, one below the other, each with its label and unit.</summary>
    public sealed record Write(string Label, string Unit) : Cell;

    /// <summary>A number in a balloon, as on the map.</summary>
    public sealed record Number(string Words) : Cell;

    public static implicit operator Cell(string words) => new Text([words]);

    public static implicit operator Cell(Span span) => new Text([span]);

    public static Cell Of(params ImmutableArray<Span> spans) => new Text(spans);
}

/// <summary>A column of a table.</summary>
/// <param name="Share">Its share of the width left by the fixed columns; or, when <paramref name="Fixed"/>, its width in points.</param>
public sealed record Column(double Share, bool Right = false, bool Fixed = false);
