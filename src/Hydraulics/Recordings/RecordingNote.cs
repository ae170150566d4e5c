namespace Ramwright.Hydraulics.Recordings;

/// <summary>What kind of thing a note on a recording is about.</summary>
public enum RecordingNoteKind
{
    /// <summary>A unit was not stated, and was taken from the size of the numbers.</summary>
    UnitAssumed,

    /// <summary>There was no header; columns were told apart by their shape.</summary>
    ColumnsAssumed,

    /// <summary>The mark before decimals, or between thousands, was not stated and was taken from the text.</summary>
    MarkAssumed,

    /// <summary>A column of time was missing; the rate was stated.</summary>
    TimeFromRate,

    /// <summary>Pressure or current is not in the file.</summary>
    SignalMissing,

    /// <summary>Rows at the end of the device's range were taken out.</summary>
    Clipped,

    /// <summary>Empty or unreadable cells count as missing.</summary>
    CellsMissing,

    /// <summary>Lines that are no rows were passed over.</summary>
    LinesPassedOver,

    /// <summary>A hole in time.</summary>
    Gap,

    /// <summary>Rows do not come at one rate.</summary>
    UnevenRate,

    /// <summary>The clock moves in steps longer than a row; rows of one time were spread.</summary>
    ClockSpread,

    /// <summary>Rows were averaged to keep the recording within its limit.</summary>
    Thinned,

    /// <summary>Columns that say nothing here.</summary>
    ColumnsIgnored,

    /// <summary>A scale, a zero or the air's pressure was taken into account as stated.</summary>
    Converted,

    /// <summary>How signs are stored: other than UTF-8.</summary>
    Encoding,
}

/// <summary>Something that was assumed, left out or corrected in reading a recording.</summary>
/// <param name="Words">One phrase without a full stop.</param>
/// <param name="Line">The first line it is about, from 1; 0: the file as a whole.</param>
public sealed record RecordingNote(RecordingNoteKind Kind, string Words, int Line = 0);
