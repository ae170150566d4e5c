using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Ramwright.Paper.Pdf;

/// <summary>
/// Writes a finished file again with every Flate stream complete: the PDF library leaves out the checksum that ends a zlib stream
/// (RFC 1950, 2.2), which strict readers complain about. Objects, numbers and metadata stay as they are; only stream bytes,
/// their lengths, the cross-reference table (ISO 32000-1, 7.5.4) and what <see cref="StableNames"/> steadies are new.
/// </summary>
internal static partial class PdfFinish
{
    public static byte[] Finish(byte[] file)
    {
        var text = Encoding.Latin1.GetString(file);
        var offsets = ReadOffsets(text, out var trailer);
        using var to = new MemoryStream(file.Length);
        to.Write(file, 0, offsets.Values.Where(o => o > 0).Min());
        var names = new StableNames();
        var moved = new SortedDictionary<int, long>();
        var order = offsets.Where(o => o.Value > 0).OrderBy(o => o.Value).Select(o => (o.Key, o.Value)).ToList();
        var xref = LastXref(text);
        for (var i = 0; i < order.Count; i++)
        {
            var end = i + 1 < order.Count ? order[i + 1].Value : xref;
            moved[order[i].Key] = to.Position;
            to.Write(Rewritten(names, file, text, order[i].Value, end));
        }

        WriteXref(to, moved, names.Of(Comment().Replace(trailer, "")));
        return StableNames.Identified(to.ToArray());
    }

    private static int LastXref(string text)
    {
        var at = text.LastIndexOf("startxref", StringComparison.Ordinal);
        var line = StartXref().Match(text, at);
        return int.Parse(line.Groups["at"].ValueSpan, CultureInfo.InvariantCulture);
    }

    private static Dictionary<int, int> ReadOffsets(string text, out string trailer)
    {
        var found = new Dictionary<int, int>();
        var at = LastXref(text);
        var end = text.IndexOf("trailer", at, StringComparison.Ordinal);
        var first = 0;
        foreach (var line in text[at..end].Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0).Skip(1))
        {
            var fields = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (fields.Length == 2)
                first = int.Parse(fields[0], CultureInfo.InvariantCulture);
            else if (fields.Length == 3)
                found[first++] = fields[2] == "n" ? int.Parse(fields[0], CultureInfo.InvariantCulture) : 0;
        }

        var tail = text.LastIndexOf("startxref", StringComparison.Ordinal);
        trailer = text[end..tail];
        return found;
    }

    private static byte[] Rewritten(StableNames names, byte[] file, string text, int start, int end)
    {
        var marker = text.IndexOf(">>\nstream", start, end - start, StringComparison.Ordinal);
        marker = marker < 0 ? text.IndexOf(">>\r\nstream", start, end - start, StringComparison.Ordinal) : marker;
        if (marker < 0)
            return Encoding.Latin1.GetBytes(names.Of(text[start..end]));
        marker = text.IndexOf("stream", marker, StringComparison.Ordinal);
        var head = names.Of(text[start..marker]);
        var length = LengthEntry().Match(head);
        if (!length.Success || !head.Contains("/FlateDecode", StringComparison.Ordinal))
            return Encoding.Latin1.GetBytes(names.Of(text[start..end]));
        var data = marker + "stream".Length;
        data += text[data] == '\r' ? 2 : 1;
        var size = int.Parse(length.Groups["size"].ValueSpan, CultureInfo.InvariantCulture);
        var packed = Packed(Unpacked(file, data, size));
        using var to = new MemoryStream();
        to.Write(Encoding.Latin1.GetBytes(head[..length.Groups["size"].Index] + packed.Length.ToString(CultureInfo.InvariantCulture) + head[(length.Groups["size"].Index + length.Groups["size"].Length)..]));
        to.Write(file, marker, data - marker);
        to.Write(packed);
        to.Write(file, data + size, end - data - size);
        return to.ToArray();
    }

    /// <summary>Past the two bytes of the zlib header; the missing checksum does not disturb a plain deflate reader.</summary>
    private static byte[] Unpacked(byte[] file, int at, int size)
    {
        using var from = new DeflateStream(new MemoryStream(file, at + 2, size - 2), CompressionMode.Decompress);
        using var to = new MemoryStream();
        from.CopyTo(to);
        return to.ToArray();
    }

    private static byte[] Packed(byte[] data)
    {
        using var to = new MemoryStream();
        using (var zlib = new ZLibStream(to, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write(data);
        return to.ToArray();
    }

    private static void WriteXref(MemoryStream to, SortedDictionary<int, long> moved, string trailer)
    {
        var at = to.Position;
        var size = moved.Keys.Max() + 1;
        var table = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"xref\n0 {size}\n0000000000 65535 f \n"));
        for (var i = 1; i < size; i++)
            table.Append(moved.TryGetValue(i, out var offset) ? string.Create(CultureInfo.InvariantCulture, $"{offset:0000000000} 00000 n \n") : "0000000000 00000 f \n");
        table.Append(trailer).Append(CultureInfo.InvariantCulture, $"startxref\n{at}\n%%EOF\n");
        to.Write(Encoding.Latin1.GetBytes(table.ToString()));
    }

    [GeneratedRegex(@"startxref\s+(?<at>\d+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex StartXref();

    [GeneratedRegex(@"%[^\n]*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Comment();

    [GeneratedRegex(@"/Length\s+(?<size>\d+)(?!\s+\d+\s+R)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LengthEntry();
}
