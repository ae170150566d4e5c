namespace Ramwright.Records.Store;

/// <summary>An entry as it lies in the database: texts exactly as they were hashed.</summary>
internal sealed class EntryRow
{
    public long Number { get; set; }

    /// <summary><c>house</c>, <c>job/SM-0417</c> or <c>tool/</c> and a serial.</summary>
    public string Stream { get; set; } = "";

    /// <summary>Stored name and version, <c>run-taken/1</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>UTC text.</summary>
    public string At { get; set; } = "";

    public string By { get; set; } = "";

    /// <summary>The submission it came with, and its 0-based place in it; the pair is unique.</summary>
    public string Token { get; set; } = "";

    public int Place { get; set; }
    public string Body { get; set; } = "";
    public string PreviousHash { get; set; } = "";
    public string Hash { get; set; } = "";
}

/// <summary>A job as the rack lists it: derived from its entries, written in the same transaction, can be made anew at any time.</summary>
internal sealed class JobRow
{
    public string Id { get; set; } = "";

    /// <summary>The running number in the id.</summary>
    public int Number { get; set; }

    public int Station { get; set; }
    public string Tool { get; set; } = "";
    public string ModelId { get; set; } = "";
    public string Customer { get; set; } = "";
    public string? Lot { get; set; }
    public string Complaint { get; set; } = "";

    /// <summary>ISO date.</summary>
    public string? Promised { get; set; }

    public string OpenedAt { get; set; } = "";
    public string LastAt { get; set; } = "";
    public long Version { get; set; }
    public int? Verdict { get; set; }
    public bool Quarantined { get; set; }
    public int? End { get; set; }
}

/// <summary>A customer's tool: the entry that last said something of it.</summary>
internal sealed class ToolRow
{
    public string Serial { get; set; } = "";
    public string ModelId { get; set; } = "";
    public string Owner { get; set; } = "";
    public long Entry { get; set; }
}
