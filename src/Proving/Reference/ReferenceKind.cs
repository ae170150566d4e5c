namespace Ramwright.Proving.Reference;

/// <summary>What measures the peak of a proof.</summary>
public enum ReferenceKind
{
    /// <summary>A force cell between jaw blocks; pressure follows through the ram's area, return spring and friction.</summary>
    ForceCell,

    /// <summary>A gauge or transducer at a pressure port.</summary>
    PortGauge,

    /// <summary>A gauge that holds the highest reading.</summary>
    PeakHoldGauge,

    /// <summary>The tool's own record of its peaks; only when its sensor was compared with a reference at this visit.</summary>
    ToolMemory,
}
