using System.Collections.Immutable;
using Ramwright.Proving;

namespace Ramwright.Paper.Sheets;

/// <summary>How a job ended when it did not end with a release.</summary>
public enum EndKind { ReturnedUnrepaired, Retired, NotProven, SentOut }

/// <summary>What the one-page paper of such an end is filled from.</summary>
public sealed record EndPaperInput
{
    public required string Number { get; init; }
    public required HouseHeader House { get; init; }
    public required JobHeader Job { get; init; }
    public required EndKind Kind { get; init; }

    /// <summary>Why, in a sentence or two.</summary>
    public required string Why { get; init; }

    /// <summary>What was found, a line each.</summary>
    public ImmutableArray<string> Found { get; init; } = [];

    /// <summary>What was done, a line each.</summary>
    public ImmutableArray<string> Done { get; init; } = [];

    /// <summary>In what state the tool leaves: assembled, in parts, battery apart; a line each.</summary>
    public ImmutableArray<string> StateOfTool { get; init; } = [];

    /// <summary>The verdict, where a proof was tried.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>To whom, where the tool was sent out.</summary>
    public string? SentTo { get; init; }

    public required DateOnly Ended { get; init; }
    public required Signer SignedBy { get; init; }
    public LedgerMark? Ledger { get; init; }
}
