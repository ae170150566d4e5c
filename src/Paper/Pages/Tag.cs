namespace Ramwright.Paper.Pages;

/// <summary>What a piece is to a reader who does not see the page.</summary>
public enum TagKind { Paragraph, Heading1, Heading2, Table, Row, HeaderCell, DataCell, Figure }

/// <summary>One element of the document's structure; pieces that share the same one belong to the same element.</summary>
/// <param name="kind">What it is.</param>
/// <param name="words">What a figure shows; null for the others.</param>
public sealed class Tag(TagKind kind, string? words = null)
{
    public TagKind Kind => kind;

    public string? Words => words;
}
