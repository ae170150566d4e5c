using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;

namespace Ramwright.Paper.Sheets;

/// <summary>What the report of a sensor check is filled from.</summary>
public sealed record SensorSheetInput
{
    public required string Number { get; init; }
    public required HouseHeader House { get; init; }
    public required JobHeader Job { get; init; }

    /// <summary>Every comparison, in pascals.</summary>
    public required ImmutableArray<SensorPoint> Points { get; init; }

    /// <summary>What was asked of the sensor.</summary>
    public required SensorTask Task { get; init; }

    public required SensorAnswer Answer { get; init; }

    /// <summary>The gauge that it was compared with.</summary>
    public required DeviceLine Reference { get; init; }

    public required DateOnly Compared { get; init; }
    public required Signer ComparedBy { get; init; }
    public required DateTimeOffset Issued { get; init; }
    public required LedgerMark Ledger { get; init; }
}
