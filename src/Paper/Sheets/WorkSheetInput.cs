using Ramwright.Paper.Drawing;
using Ramwright.Parts;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets;

/// <summary>What a work sheet is filled from. Strip or rebuild may be absent, not both.</summary>
public sealed record WorkSheetInput
{
    public required HouseHeader House { get; init; }
    public required JobHeader Job { get; init; }
    public required ServiceModel Model { get; init; }
    public StripPlan? Strip { get; init; }
    public RebuildPlan? Rebuild { get; init; }

    /// <summary>The strip map of the plan, as <c>StripMapPicture</c> draws it.</summary>
    public Picture? Map { get; init; }

    /// <summary>Its legend.</summary>
    public Picture? MapLegend { get; init; }

    /// <summary>What was bought for the job, for the contents of kits that must not be used on this tool.</summary>
    public Cover? Cover { get; init; }

    /// <summary>What the work is for, in a sentence.</summary>
    public string? Purpose { get; init; }

    public required DateTimeOffset PrintedAt { get; init; }
    public Signer? PlannedBy { get; init; }
    public LedgerMark? Ledger { get; init; }
}
