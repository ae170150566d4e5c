using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Sheets.Proof;
using Ramwright.Paper.Tests.Saltmarsh;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class QrPictureTests
{
    // Oracle: poppler draws the page, the open library ZXing.Net reads the code from the pixels.
    [Fact]
    public void Is_read_from_the_printed_page()
    {
        var pdf = ProofReport.Render(Proofs.Report, PaperSize.A4, UnitSystem.Metric);
        var image = Run.Grey(pdf, dotsPerInch: 150);
        var source = new RGBLuminanceSource(image.Pixels, image.Width, image.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        Assert.NotNull(read);
        Assert.Equal(ProofPayload.Of(Proofs.Report), read.Text);
        Assert.Equal($"RAMWRIGHT/1 PROOF SM-0409-P1 CONFORMS 18204 {House.Ledger.Head.ToUpperInvariant()}", read.Text);
    }
}
