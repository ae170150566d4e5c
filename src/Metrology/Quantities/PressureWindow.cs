namespace Ramwright.Metrology.Quantities;

/// <summary>Two pressure limits, the lower below the upper.</summary>
public readonly record struct PressureWindow
{
    public PressureWindow(Pressure min, Pressure max)
    {
        if (!(min < max))
            throw new ArgumentOutOfRangeException(nameof(max), max.Bar, $"The upper limit must lie above the lower one, {min.Bar} bar.");
        Min = min;
        Max = max;
    }

    public Pressure Min { get; }

    public Pressure Max { get; }

    public Pressure Middle => 0.5 * (Min + Max);

    public bool Holds(Pressure p) => p >= Min && p <= Max;
}

/// <summary>Two force limits, the lower below the upper.</summary>
public readonly record struct ForceWindow
{
    public ForceWindow(Force min, Force max)
    {
        if (!(min < max))
            throw new ArgumentOutOfRangeException(nameof(max), max.Newtons, $"The upper limit must lie above the lower one, {min.Newtons} N.");
        Min = min;
        Max = max;
    }

    public Force Min { get; }

    public Force Max { get; }
}
