using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The paper of an end without release: one page.</summary>
public static class EndPaper
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(EndPaperInput input, PaperSize size, UnitSystem units) => throw new NotSupportedException("drawn in the next landing");
}
