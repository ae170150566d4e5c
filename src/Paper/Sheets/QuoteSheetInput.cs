using System.Collections.Immutable;
using Ramwright.Parts;

namespace Ramwright.Paper.Sheets;

/// <summary>What a quote is filled from.</summary>
public sealed record QuoteSheetInput
{
    public required HouseHeader House { get; init; }
    public required JobHeader Job { get; init; }
    public required Quote Quote { get; init; }
    public required string Number { get; init; }
    public required DateOnly Issued { get; init; }
    public required Signer PreparedBy { get; init; }

    /// <summary>What was found, a line each.</summary>
    public ImmutableArray<string> Found { get; init; } = [];

    /// <summary>What is offered, a line each.</summary>
    public ImmutableArray<string> Work { get; init; } = [];

    /// <summary>Number of the quote that this one takes the place of.</summary>
    public string? Replaces { get; init; }

    /// <summary>Further terms of the house, a line each.</summary>
    public ImmutableArray<string> Terms { get; init; } = [];

    public LedgerMark? Ledger { get; init; }
}
