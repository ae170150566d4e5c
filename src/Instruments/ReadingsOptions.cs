using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments;

/// <summary>What is known of a text of readings beside the text.</summary>
public sealed record ReadingsOptions
{
    /// <summary>The unit, where no header names it; a header that names another is a mistake, not overruled.</summary>
    public ReadingUnit? Unit { get; init; }

    /// <summary>The unit taken where neither the header nor <see cref="Unit"/> says one; the answer then says that it was assumed. Null refuses such a text.</summary>
    public ReadingUnit? AssumedUnit { get; init; }

    /// <summary>The decimal mark, where it is known; else it is found in the text, which is refused when two readings of it are possible.</summary>
    public DecimalMark? Decimal { get; init; }

    /// <summary>The ram area, with which a force in kN becomes a pressure; null refuses forces.</summary>
    public Area? RamArea { get; init; }

    /// <summary>What return spring and friction hold back of the force on the ram, zero or more; added to each force before it is divided by the area.</summary>
    public Force ForceHeldBack { get; init; }
}
