using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>The quote, with the customer's yes or no.</summary>
public static class QuoteSheet
{
    /// <summary>The sheet as PDF.</summary>
    public static byte[] Render(QuoteSheetInput input, PaperSize size, UnitSystem units) => throw new NotSupportedException("drawn in the next landing");
}
