using System.Collections.Immutable;

namespace Ramwright.Paper.Sheets;

/// <summary>Paper that a sheet is laid out for.</summary>
public enum PaperSize { A4, Letter }

/// <summary>The house as it stands on every sheet.</summary>
/// <param name="Name">Such as a made-up <c>Saltmarsh Tool Service</c>.</param>
public sealed record HouseHeader(string Name)
{
    /// <summary>Lines of the postal address.</summary>
    public ImmutableArray<string> Address { get; init; } = [];

    /// <summary>Telephone, post box, site: as the house writes them.</summary>
    public ImmutableArray<string> Contact { get; init; } = [];
}

/// <summary>Which job, which tool, whose.</summary>
public sealed record JobHeader
{
    public required string Number { get; init; }

    /// <summary>Name of the tool family as people say it.</summary>
    public required string Tool { get; init; }

    /// <summary>Serial number of this tool; null when its plate cannot be read.</summary>
    public string? Serial { get; init; }

    public required string Customer { get; init; }

    /// <summary>The customer's own reference, such as an order number.</summary>
    public string? CustomerReference { get; init; }

    public DateOnly? Received { get; init; }

    /// <summary>In words: leaking at the cap, complete, no damage seen.</summary>
    public string? ConditionOnReceipt { get; init; }
}

/// <summary>A person who signs, and in what office.</summary>
public sealed record Signer(string Name, string? Role = null)
{
    public override string ToString() => Role is null ? Name : $"{Name}, {Role}";
}

/// <summary>Where in the ledger a sheet stands.</summary>
/// <param name="Entry">Number of the last entry it rests on.</param>
/// <param name="Head">Hash of that entry, hexadecimal.</param>
public sealed record LedgerMark(long Entry, string Head);
