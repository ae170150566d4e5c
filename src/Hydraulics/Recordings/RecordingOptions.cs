using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>What is known of a recording beside its text. All of it may stay unsaid; what is said overrules the header, with a note.</summary>
public sealed record RecordingOptions
{
    /// <summary>Name or number (from 1) of the column of time; null to find it.</summary>
    public string? TimeColumn { get; init; }

    /// <summary>Name or number (from 1) of the column of pressure; null to find it.</summary>
    public string? PressureColumn { get; init; }

    /// <summary>Name or number (from 1) of the column of current; null to find it.</summary>
    public string? CurrentColumn { get; init; }

    /// <summary>Unit of the column of time, a unit of time; null to find it.</summary>
    public Unit? TimeUnit { get; init; }

    /// <summary>Unit of the column of pressure, a unit of pressure; null to find it.</summary>
    public Unit? PressureUnit { get; init; }

    /// <summary>Unit of the column of current, a unit of current; null to find it.</summary>
    public Unit? CurrentUnit { get; init; }

    /// <summary>How volts or milliamperes of a sensor become a pressure; null where the column is a pressure already.</summary>
    public SensorScale? PressureScale { get; init; }

    /// <summary>How volts of a clamp or shunt become a current; null where the column is a current already.</summary>
    public SensorScale? CurrentScale { get; init; }

    /// <summary>What the pressure sensor shows at atmosphere, in pascals; taken off.</summary>
    public double PressureZeroPascals { get; init; }

    /// <summary>What the current sensor shows without current, in amperes; taken off.</summary>
    public double CurrentZeroAmperes { get; init; }

    /// <summary>Highest pressure that the sensor can show, in pascals; rows at it count as missing. Null to find a flat top.</summary>
    public double? PressureFullScalePascals { get; init; }

    /// <summary>Rows per second, above 0, for a file without a column of time.</summary>
    public double? RowsPerSecond { get; init; }

    /// <summary>The mark before decimals; null to find it.</summary>
    public DecimalMark? Decimal { get; init; }

    /// <summary>What stands between columns; a blank stands for any run of blanks. Null to find it.</summary>
    public char? Separator { get; init; }

    /// <summary>Most rows kept, 1,000 or more; a longer recording is averaged down to no fewer than 1,000 rows a second, and refused when that is not enough.</summary>
    public int MostRows { get; init; } = 1 << 19;
}
