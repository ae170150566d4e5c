using System.Collections.Immutable;

namespace Ramwright.App.Web.Frame;

/// <summary>What a page tells the frame around it.</summary>
public sealed record Sheet
{
    /// <summary>The heading, and the title of the window.</summary>
    public required string Title { get; init; }

    /// <summary>The small line above the heading.</summary>
    public string? Eyebrow { get; init; }

    /// <summary>Which entry of the house line is current: <c>rack</c>, <c>tools</c>, <c>models</c>, <c>instruments</c>, <c>people</c>, <c>house</c>, <c>help</c>.</summary>
    public string? Place { get; init; }

    /// <summary>The nine stations of a job; null where the page belongs to no job.</summary>
    public StationRoute? Route { get; init; }

    /// <summary>The fields of the title block, at most seven.</summary>
    public ImmutableArray<BlockField> Block { get; init; } = [];

    /// <summary>Nothing is drawn beside the work.</summary>
    public bool Wide { get; init; }

    /// <summary>Read at the counter, not at the vice: smaller words, smaller fields.</summary>
    public bool Counter { get; init; }

    /// <summary>On a narrow screen the drawing comes before the work.</summary>
    public bool DrawingFirst { get; init; }

    public string BodyClass => string.Join(' ', new[]
    {
        Wide ? "wide" : null,
        Counter ? "counter" : null,
        Route is null ? "no-route" : null,
        DrawingFirst ? "drawing-first" : null,
    }.OfType<string>());
}

/// <summary>A field of the title block.</summary>
/// <param name="Small">Said after the value, smaller.</param>
/// <param name="Link">Where the field leads, if anywhere.</param>
/// <param name="Less">Left away on a phone.</param>
public sealed record BlockField(string Label, string Value, string? Small = null, string? Link = null, bool Less = false);
