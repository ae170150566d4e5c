using System.Collections.Immutable;

namespace Ramwright.App.Web.Parts;

/// <summary>What a field takes.</summary>
public enum FieldKind { Text, Figure, LongText, Date, Choice, File, Files, BigFigure }

/// <summary>One of the values that a choice offers.</summary>
public sealed record Option(string Value, string Text);

/// <summary>A labelled field of a form, with hint, unit, suggestions and its mistake.</summary>
/// <param name="Name">Name in the form and id on the page.</param>
public sealed record Field(string Name, string Label, string? Value = null, FieldKind Kind = FieldKind.Text)
{
    public string? Hint { get; init; }

    /// <summary>Shown right of the figure.</summary>
    public string? Unit { get; init; }

    public bool Required { get; init; }

    /// <summary>Takes the whole width of the form.</summary>
    public bool Across { get; init; }

    public ImmutableArray<Option> Options { get; init; } = [];

    /// <summary>Offered while typing, not enforced.</summary>
    public ImmutableArray<string> Suggestions { get; init; } = [];

    public FormMistake? Mistake { get; init; }

    public string? Autocomplete { get; init; } = "off";

    public int MaxLength { get; init; } = 200;

    public string? DescribedBy => (Hint, Mistake) switch
    {
        (null, null) => null,
        ({ }, null) => $"{Name}-hint",
        (null, { }) => $"{Name}-said",
        _ => $"{Name}-said {Name}-hint",
    };
}
