using Ramwright.Metrology.Text;
using Ramwright.Paper.Dcc;
using Ramwright.Paper.Sheets;

namespace Ramwright.Paper.Signing;

/// <summary>A proof report as it leaves the house: the signed PDF file, and what travels inside it also by itself.</summary>
/// <param name="Result">JSON, <c>ramwright/proof-result/1</c>, signed.</param>
/// <param name="Dcc">The figures as a digital calibration certificate's XML; signed only as a part of the PDF file.</param>
/// <param name="Code">Text of the code printed on it.</param>
public sealed record SignedReport(byte[] Pdf, byte[] Result, byte[] Dcc, string Code)
{
    public static SignedReport Of(ProofReportInput input, PaperSize size, UnitSystem units, HouseKey key)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(key);
        var code = ProofCode.Of(input, key.Id).Sign(key);
        var result = ProofResult.Write(input, code, key);
        var dcc = DccXml.Write(input);
        var sheet = ProofReport.Render(input, size, units, new PrintedCode(code, key.Id.Hex));
        var pdf = SignedPdf.Write(sheet, key, input.ReleasedBy.Name, input.Issued,
            [new(ProofResult.FileName, "application/json", "The result as programs read it, signed", result),
             new(DccXml.FileName, "application/xml", "The figures in the form of a digital calibration certificate", dcc)]);
        return new(pdf, result, dcc, code);
    }
}
