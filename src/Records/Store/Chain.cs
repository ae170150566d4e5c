using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Ramwright.Records.Store;

/// <summary>The hash that chains an entry to the one before it.</summary>
/// <remarks>
/// SHA-256 (FIPS 180-4) over the fields in fixed order, each as UTF-8 behind its length in eight bytes, so that no two different entries
/// give the same bytes. The entry before enters by its hash.
/// </remarks>
internal static class Chain
{
    /// <summary>Names the way of hashing; another way gets another name.</summary>
    private const string Method = "ramwright-ledger/1";

    public static string HashOf(EntryRow entry)
    {
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(sha, Method);
        Add(sha, entry.PreviousHash);
        Add(sha, entry.Number.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Add(sha, entry.Stream);
        Add(sha, entry.Kind);
        Add(sha, entry.At);
        Add(sha, entry.By);
        Add(sha, entry.Token);
        Add(sha, entry.Place.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Add(sha, entry.Body);
        return Convert.ToHexStringLower(sha.GetHashAndReset());
    }

    private static void Add(IncrementalHash sha, string field)
    {
        var bytes = Encoding.UTF8.GetBytes(field);
        Span<byte> length = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(length, bytes.Length);
        sha.AppendData(length);
        sha.AppendData(bytes);
    }
}
