using System.Collections.Immutable;

namespace Ramwright.App.Web.Parts;

/// <summary>A label with its value; the note stands under it, smaller.</summary>
public sealed record Fact(string Label, string Value, string? Note = null);

/// <summary>Facts in columns: two, three or four.</summary>
public sealed record Facts(ImmutableArray<Fact> Items, int Columns = 2)
{
    public static Facts Of(params ReadOnlySpan<Fact> items) => new([.. items]);

    public string Css => Columns switch { 3 => "facts three", 4 => "facts four", _ => "facts" };
}
