using System.Collections.Immutable;
using QRCoder;
using Ramwright.Paper.Drawing;

namespace Ramwright.Paper.Sheets;

/// <summary>A QR code (ISO/IEC 18004) as a picture, its quiet zone of four modules included; one unit is one module.</summary>
public static class QrPicture
{
    public static Picture Of(string payload, string title)
    {
        using var code = QRCodeGenerator.GenerateQrCode(payload, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        var stretches = ImmutableArray.CreateBuilder<Stretch>();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows[y].Count;)
            {
                var end = x;
                while (end < rows[y].Count && rows[y][end])
                    end++;
                if (end > x)
                    stretches.AddRange(new Stretch.MoveTo(new(x, y)), new Stretch.LineTo(new(end, y)), new Stretch.LineTo(new(end, y + 1)), new Stretch.LineTo(new(x, y + 1)), new Stretch.Close());
                x = end + 1;
            }
        }

        return new(rows.Count, rows.Count, title) { Shapes = [new Shape.Path(Ink.SignBlack, stretches.ToImmutable())] };
    }
}
