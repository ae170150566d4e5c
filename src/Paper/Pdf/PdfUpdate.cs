using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Ramwright.Paper.Pdf;

/// <summary>Adds objects to a finished file without touching a byte of it: an incremental update (ISO 32000-1, 7.5.6). Reads only files of <see cref="PdfFinish"/>.</summary>
internal sealed partial class PdfUpdate : IDisposable
{
    private readonly SortedDictionary<int, long> places = [];
    private readonly MemoryStream to = new();
    private readonly string text;
    private readonly int tableAt;
    private int next;

    public PdfUpdate(byte[] file)
    {
        text = Encoding.Latin1.GetString(file);
        to.Write(file);
        var trailer = Trailer().Match(text, text.LastIndexOf("trailer", StringComparison.Ordinal));
        if (!trailer.Success)
            throw new ArgumentException("Only a file that this house has just written can be added to.", nameof(file));
        (Root, Info, Id) = (Int(trailer, "root"), Int(trailer, "info"), trailer.Groups["id"].Value);
        next = Int(trailer, "size");
        tableAt = Int(trailer, "at");
    }

    /// <summary>Number of the catalogue.</summary>
    public int Root { get; }

    private int Info { get; }

    private string Id { get; }

    /// <summary>Number of the first page.</summary>
    public int FirstPage() => Int(Kids().Match(Body(Int(Pages().Match(Body(Root)), "number"))), "number");

    /// <summary>What stands between <c>obj</c> and <c>endobj</c>.</summary>
    public string Body(int number)
    {
        var lines = text.IndexOf('\n', text.IndexOf('\n', tableAt) + 1) + 1; // past "xref" and "0 SIZE"; then 20 bytes for each object
        var at = int.Parse(text.AsSpan(lines + (20 * number), 10), CultureInfo.InvariantCulture);
        var start = text.IndexOf("obj", at, StringComparison.Ordinal) + 3;
        return text[start..text.IndexOf("endobj", start, StringComparison.Ordinal)].Trim();
    }

    public int Reserve() => next++;

    /// <summary>Writes an object; returns where its body begins.</summary>
    public long Put(int number, string body)
    {
        places[number] = to.Position;
        Write(string.Create(CultureInfo.InvariantCulture, $"{number} 0 obj\n"));
        var at = to.Position;
        Write(body + "\nendobj\n");
        return at;
    }

    /// <summary>Writes a dictionary again with more entries in it.</summary>
    public void Extend(int number, string entries) => Put(number, Body(number)[..^2] + entries + ">>");

    /// <summary>Writes a stream, not compressed.</summary>
    public void Put(int number, string entries, ReadOnlySpan<byte> data)
    {
        places[number] = to.Position;
        Write(string.Create(CultureInfo.InvariantCulture, $"{number} 0 obj\n<<{entries}/Length {data.Length}>>\nstream\n"));
        to.Write(data);
        Write("\nendstream\nendobj\n");
    }

    /// <summary>Closes the update with its own table, which points back to the file's.</summary>
    public byte[] Close()
    {
        var at = to.Position;
        var table = new StringBuilder("xref\n");
        foreach (var (number, place) in places)
            table.Append(CultureInfo.InvariantCulture, $"{number} 1\n{place:0000000000} 00000 n \n");
        table.Append(CultureInfo.InvariantCulture, $"trailer\n<</ID[<{Id}><{Id}>]/Info {Info} 0 R/Root {Root} 0 R/Size {next}/Prev {tableAt}>>\nstartxref\n{at}\n%%EOF\n");
        Write(table.ToString());
        return to.ToArray();
    }

    public void Dispose() => to.Dispose();

    private void Write(string ascii) => to.Write(Encoding.Latin1.GetBytes(ascii));

    private static int Int(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"trailer\s*<<\s*/ID\[<(?<id>[0-9a-f]{32})><[0-9a-f]{32}>\]/Info (?<info>\d+) 0 R/Root (?<root>\d+) 0 R/Size (?<size>\d+)\s*>>\s*startxref\s+(?<at>\d+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Trailer();

    [GeneratedRegex(@"/Pages (?<number>\d+) 0 R", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pages();

    [GeneratedRegex(@"/Kids\[\s*(?<number>\d+) 0 R", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Kids();
}
