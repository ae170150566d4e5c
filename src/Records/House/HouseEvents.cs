using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.House;

/// <summary>A person may sign, or what is known of a person changed: the last one counts.</summary>
/// <param name="Role">In words: "technician".</param>
/// <param name="Works">False once the person has left; the name stays on what was signed.</param>
public sealed record PersonRegistered(PersonId Person, string Name, string Role, bool MayAuthoriseRelease, bool Works = true) : HouseEvent;

/// <summary>A customer, or new facts of one: the last one counts.</summary>
public sealed record CustomerRegistered(CustomerId Customer, string Name) : HouseEvent
{
    public string? Address { get; init; }
    public string? Contact { get; init; }

    /// <summary>Service interval agreed with the customer; null: no next-due date goes on report or label.</summary>
    public TimeSpan? AgreedInterval { get; init; }
}

/// <summary>A customer's tool, or new facts of one: the last one counts.</summary>
public sealed record ToolRegistered(ToolSerial Tool, string ModelId, CustomerId Owner) : HouseEvent
{
    public int? YearBuilt { get; init; }
    public string? Note { get; init; }
}

/// <summary>Tools that came in together.</summary>
public sealed record LotOpened(LotId Lot, CustomerId Customer, string Text) : HouseEvent;

/// <summary>What a batch is of.</summary>
public enum BatchKind { Seal, Oil, Part, Adhesive, Grease }

/// <summary>A batch of seals, oil or the like came into store.</summary>
/// <param name="What">What it is, in words or by part number.</param>
/// <param name="Expires">Last day on which it may be used; null when it does not perish.</param>
public sealed record BatchReceived(BatchId Batch, BatchKind Kind, string What, DateOnly Received, DateOnly? Expires) : HouseEvent
{
    /// <summary>The number of the part it is of, where it is one.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Pieces; null for oil.</summary>
    public int? Count { get; init; }

    /// <summary>Amount of oil.</summary>
    public Volume? Oil { get; init; }

    /// <summary>ISO 6743-4 class and grade of oil, or material of seals.</summary>
    public string? Material { get; init; }
}

/// <summary>The settings of the house were changed; the last one counts.</summary>
public sealed record SettingsChanged(HouseSettings Settings) : HouseEvent;
