using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The work sheet: strip and rebuild, step by step, to be ticked and signed at the vice.</summary>
public static class WorkSheet
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(WorkSheetInput input, PaperSize size, UnitSystem units) => throw new NotSupportedException("drawn in the next landing");
}
