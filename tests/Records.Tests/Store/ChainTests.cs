using System.Diagnostics;
using System.Text;
using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

public sealed class ChainTests
{
    private static EntryRow Row() => new()
    {
        Number = 7,
        Stream = "job/SM-0417",
        Kind = "note-written/1",
        At = "2026-03-02T12:00:00.0000000Z",
        By = "ada-fenn",
        Token = "00000000-0000-0000-0000-000000000001",
        Place = 0,
        Body = """{"station":"set","text":"Öl 95 ml"}""",
        PreviousHash = new('0', 64),
    };

    /// <summary>Oracle: sha256sum of GNU coreutils over the same bytes, laid out here by hand.</summary>
    [Fact]
    public void The_hash_is_sha256_over_the_fields_each_behind_its_length()
    {
        var row = Row();
        using var bytes = new MemoryStream();
        foreach (var field in new[] { "ramwright-ledger/1", row.PreviousHash, "7", row.Stream, row.Kind, row.At, row.By, row.Token, "0", row.Body })
        {
            var text = Encoding.UTF8.GetBytes(field);
            bytes.Write([0, 0, 0, 0, 0, 0, (byte)(text.Length >> 8), (byte)text.Length]);
            bytes.Write(text);
        }

        using var sum = Process.Start(new ProcessStartInfo("sha256sum") { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true })!;
        sum.StandardInput.BaseStream.Write(bytes.ToArray());
        sum.StandardInput.Close();
        Assert.Equal(sum.StandardOutput.ReadToEnd()[..64], Chain.HashOf(row));
    }

    [Fact]
    public void Moving_a_character_from_one_field_to_the_next_changes_the_hash()
    {
        var one = Row();
        var other = Row();
        (other.Stream, other.Kind) = (one.Stream + "n", one.Kind[1..]);
        Assert.NotEqual(Chain.HashOf(one), Chain.HashOf(other), StringComparer.Ordinal);
    }
}
