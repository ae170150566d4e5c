using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments;

/// <summary>One peak as read.</summary>
/// <param name="Run">Number of the run: as the file counts, else 1, 2, 3 ... in order.</param>
/// <param name="Line">1-based line of the text it was read from.</param>
public sealed record Reading(int Run, Pressure Peak, int Line);

/// <summary>A run marked void in the file, with the cause given there; its value is kept and judged by nothing.</summary>
public sealed record VoidReading(int Run, Pressure? Peak, int Line, string Cause);
