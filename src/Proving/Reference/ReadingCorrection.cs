using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Reference;

/// <summary>How a device's readings are made right, fixed when a series opens: what it shows plus c₀ + c₁·(x − centre) + c₂·(x − centre)².</summary>
/// <param name="Centre">Reading about which the line was fitted, in SI of what the device shows: Pa, or N for a force cell.</param>
/// <param name="Coefficients">c₀, c₁, c₂, as many as the form has; in SI of the reading. None: readings count as shown.</param>
/// <param name="RamArea">For a force cell: area of the ram. Null for every other kind.</param>
/// <param name="HeldBack">For a force cell: what spring and friction hold back.</param>
public sealed record ReadingCorrection(double Centre, ImmutableArray<double> Coefficients, Area? RamArea = null, Force? HeldBack = null)
{
    /// <summary>Null where readings count as shown and are pressures already.</summary>
    public static ReadingCorrection? Of(CalibrationLine? line, ForceConversion? force) =>
        line is null && force is null ? null : new(line?.Centre ?? 0, line?.Coefficients ?? [], force?.Area, force?.HeldBack);

    /// <summary>Whether readings are changed.</summary>
    public bool Changes => !Coefficients.IsEmpty;

    /// <summary>The pressure that a force between the jaws stands for, not corrected; null for a device that reads pressure.</summary>
    public Pressure? Equivalent(Force shown) => RamArea is { } area && HeldBack is { } heldBack ? (shown + heldBack) / area : null;

    /// <summary>The correction of a reading, a value in SI of what the device shows.</summary>
    public double At(double reading)
    {
        var sum = 0.0;
        for (var i = Coefficients.Length - 1; i >= 0; i--)
            sum = (sum * (reading - Centre)) + Coefficients[i];
        return sum;
    }

    /// <summary>The pressure that counts where the device shows this one; a force cell's reading was turned into a pressure before.</summary>
    public Pressure Correct(Pressure shown)
    {
        if (RamArea is not { } area || HeldBack is not { } heldBack)
            return Pressure.FromPascals(shown.Pascals + At(shown.Pascals));
        var force = (shown * area) - heldBack;
        return (Force.FromNewtons(force.Newtons + At(force.Newtons)) + heldBack) / area;
    }

    /// <summary>The change at this pressure, as a pressure.</summary>
    public Pressure ChangeAt(Pressure shown) => Correct(shown) - shown;
}
