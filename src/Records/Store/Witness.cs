using System.Globalization;
using System.Text;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Store;

/// <summary>
/// A plain text file beside the ledger that gets one line per write, <c>NUMBER HASH</c>, and is only ever added to.
/// A ledger whose tail was cut, or that was rewritten as a whole, no longer agrees with it.
/// </summary>
internal sealed class Witness(string path)
{
    private readonly Lock gate = new();
    private long last = -1;

    public string Path { get; } = path;

    /// <summary>Adds the head, on the disk before it returns; a head that it already knows adds nothing.</summary>
    public void See(LedgerHead head)
    {
        lock (gate)
        {
            if (last < 0)
                last = Heads().Select(h => h.Number.Value).DefaultIfEmpty(0).Max();
            if (head.Number.Value <= last)
                return;
            using var file = new FileStream(Path, FileMode.Append, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            file.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{head.Number} {head.Hash}\n")));
            file.Flush(flushToDisk: true);
            last = head.Number.Value;
        }
    }

    /// <summary>Every head it knows; lines that are not whole (a crash while writing) are passed over.</summary>
    public IEnumerable<LedgerHead> Heads()
    {
        if (!File.Exists(Path))
            yield break;
        using var file = new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var reader = new StreamReader(file, Encoding.ASCII);
        while (reader.ReadLine() is { } line)
        {
            var blank = line.IndexOf(' ', StringComparison.Ordinal);
            if (blank > 0 && EntryNumber.TryParse(line[..blank], out var number) && line.Length == blank + 65)
                yield return new(number, line[(blank + 1)..]);
        }
    }
}
