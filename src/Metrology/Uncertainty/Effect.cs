namespace Ramwright.Metrology.Uncertainty;

/// <summary>Whether a contribution is the same in every run or new in each.</summary>
public enum Effect
{
    /// <summary>The same in every run of a series: it moves all readings together, and a mean does not lessen it.</summary>
    Systematic,

    /// <summary>New in each run: it is already in the scatter of a series.</summary>
    Random,
}
