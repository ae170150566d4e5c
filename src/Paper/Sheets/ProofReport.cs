using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The proof report.</summary>
public static class ProofReport
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(ProofReportInput input, PaperSize size, UnitSystem units) => throw new NotSupportedException("drawn in the next landing");
}
