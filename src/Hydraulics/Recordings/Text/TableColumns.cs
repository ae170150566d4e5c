using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>The column of time. Index −1: there is none, and rows come at a stated rate.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Unit">Null for time stamps.</param>
/// <param name="Fraction">Column that holds what stands behind the comma of a time stamp, from 0; −1 for none.</param>
internal sealed record TimeColumn(int Index, Unit? Unit, int Fraction = -1)
{
    /// <summary>Seconds between rows where there is no column.</summary>
    public double StepSeconds { get; init; }
}

/// <summary>A column of pressure or current.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Unit">Null where it is to be taken from the size of the numbers.</param>
internal sealed record SignalColumn(int Index, string Name, WrittenUnit? Unit, SensorScale? Scale);

/// <summary>Which column holds what.</summary>
/// <param name="ByShape">Without a header: the two signals are told apart by their shape when all rows are known.</param>
internal sealed record TableColumns(TimeColumn Time, SignalColumn? Pressure, SignalColumn? Current, bool ByShape);
