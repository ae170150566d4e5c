using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving;

/// <summary>The limits of a series, moved by what the device may be off: inward for a claim, outward for a refusal.</summary>
/// <remarks>
/// The random part of a reading is already in the scatter of the runs, so the guards hold the systematic part alone. A single run has no scatter to
/// hide in: its allowance is both parts, root sum of squares. A true peak above its reading threatens the upper limit and excuses a low reading, and
/// the other way round.
/// </remarks>
internal readonly record struct Guards(PressureWindow Limits, SystematicUncertainty Systematic)
{
    public Pressure Low => Limits.Min + Systematic.BelowLimit;

    public Pressure High => Limits.Max - Systematic.AboveLimit;

    public Pressure LowOutward => Limits.Min - Systematic.AboveLimit;

    public Pressure HighOutward => Limits.Max + Systematic.BelowLimit;

    public Pressure HalfWidth => 0.5 * (High - Low);

    public Pressure Aim => 0.5 * (Low + High);

    public Pressure Together => Systematic.BelowLimit + Systematic.AboveLimit;

    /// <summary>Whether the guards leave no room at all.</summary>
    public bool LeaveNothing => Low >= High;

    /// <summary>By how much a single run may lie beyond a limit and still be right.</summary>
    public Pressure Allowance(LimitSide side)
    {
        var systematic = side == LimitSide.Upper ? Systematic.BelowLimit : Systematic.AboveLimit;
        return Pressure.FromPascals(Math.Sqrt(systematic.Pascals * systematic.Pascals + Systematic.RandomExpanded.Pascals * Systematic.RandomExpanded.Pascals));
    }
}
