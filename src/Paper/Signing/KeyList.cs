using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json.Nodes;

namespace Ramwright.Paper.Signing;

/// <summary>A key of the house as everybody may know it.</summary>
/// <param name="PublicKey">SubjectPublicKeyInfo, DER.</param>
/// <param name="From">First day on which it signed.</param>
/// <param name="Until">Day on which another key took over; null while it signs.</param>
/// <param name="Revoked">Set when papers under it can no longer be trusted.</param>
public sealed record ListedKey(KeyId Id, ImmutableArray<byte> PublicKey, DateOnly From, DateOnly? Until = null, Revocation? Revoked = null)
{
    /// <summary>Whether the signature (r and s, 64 bytes) over the message is this key's.</summary>
    public bool Signed(ReadOnlySpan<byte> message, ReadOnlySpan<byte> signature)
    {
        using var key = ECDsa.Create();
        key.ImportSubjectPublicKeyInfo(PublicKey.AsSpan(), out _);
        return key.VerifyData(message, signature, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);
    }
}

/// <summary>Since when a key is not to be trusted any more, and why.</summary>
public sealed record Revocation(DateOnly On, string Why);

/// <summary>One paper that took another's place.</summary>
public sealed record Superseded(string Number, string By);

/// <summary>
/// The house's keys, which of them are revoked, and which reports were replaced, as of a moment. It holds nothing secret and goes
/// to whoever is to check papers; it is signed by the key that signs papers at that moment.
/// </summary>
public sealed record KeyList
{
    public required string House { get; init; }

    public required DateTimeOffset AsOf { get; init; }

    public required ImmutableArray<ListedKey> Keys { get; init; }

    public ImmutableArray<Superseded> Superseded { get; init; } = [];

    /// <summary>The key that signs now; null when it was revoked and no other made yet.</summary>
    public ListedKey? Signing => Keys.LastOrDefault(k => k is { Until: null, Revoked: null });

    public ListedKey? Find(string id) => Keys.FirstOrDefault(k => k.Id.Hex == id);

    public string? ReplacedBy(string number) => Superseded.FirstOrDefault(s => s.Number == number)?.By;
}

/// <summary>What came of reading a list.</summary>
public abstract record KeyListRead
{
    private KeyListRead() { }

    public sealed record Got(KeyList List) : KeyListRead;

    public sealed record Damaged(string What) : KeyListRead;
}

/// <summary>A list as a file: <c>ramwright/paper-keys/1</c>.</summary>
public static class KeyListFile
{
    private const string Schema = "ramwright/paper-keys/1";

    /// <summary>The list, signed.</summary>
    public static byte[] Write(KeyList list, HouseKey signer)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(signer);
        return SignedJson.Write(new JsonObject
        {
            ["schema"] = Schema,
            ["house"] = list.House,
            ["asOf"] = list.AsOf.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture),
            ["keys"] = new JsonArray([.. list.Keys.Select(KeyOf)]),
            ["superseded"] = new JsonArray([.. list.Superseded.Select(s => new JsonObject { ["report"] = s.Number, ["by"] = s.By })]),
        }, signer);
    }

    /// <summary>Reads a list and checks that it is whole: signed by the one of its keys that signs.</summary>
    public static KeyListRead Read(ReadOnlySpan<byte> utf8)
    {
        if (CanonicalJson.Read(utf8) is not { } json)
            return new KeyListRead.Damaged("it is no JSON document");
        try
        {
            if ((string?)json["schema"] != Schema)
                return new KeyListRead.Damaged($"its schema is not {Schema}");
            var list = new KeyList
            {
                House = (string)json["house"]!,
                AsOf = DateTimeOffset.Parse((string)json["asOf"]!, System.Globalization.CultureInfo.InvariantCulture),
                Keys = [.. json["keys"]!.AsArray().Select(k => KeyFrom(k!))],
                Superseded = [.. json["superseded"]!.AsArray().Select(s => new Superseded((string)s!["report"]!, (string)s["by"]!))],
            };
            if (list.Keys.FirstOrDefault(k => KeyId.Of(k.PublicKey.AsSpan()) != k.Id) is { } other)
                return new KeyListRead.Damaged($"key {other.Id} does not have that name");
            if (SignedJson.Read(json) is not { } signed || list.Find(signed.Key) is not { Until: null, Revoked: null } by || !by.Signed(signed.Message, signed.Signature))
                return new KeyListRead.Damaged("it is not signed by the key that signs in it: something was changed");
            return new KeyListRead.Got(list);
        }
        catch (Exception bad) when (bad is FormatException or InvalidOperationException or ArgumentException or NullReferenceException or CryptographicException)
        {
            return new KeyListRead.Damaged("a member is missing or has the wrong form");
        }
    }

    private static JsonObject KeyOf(ListedKey key)
    {
        var json = new JsonObject { ["id"] = key.Id.Hex, ["publicKey"] = Convert.ToBase64String(key.PublicKey.AsSpan()), ["from"] = Day(key.From) };
        if (key.Until is { } until)
            json["until"] = Day(until);
        if (key.Revoked is { } revoked)
            json["revoked"] = new JsonObject { ["on"] = Day(revoked.On), ["why"] = revoked.Why };
        return json;
    }

    private static ListedKey KeyFrom(JsonNode json)
    {
        if (!KeyId.TryRead((string?)json["id"], out var id))
            throw new FormatException("A key's name is 16 hexadecimal digits.");
        var revoked = json["revoked"] is { } r ? new Revocation(DayOf(r["on"]), (string)r["why"]!) : null;
        return new(id, [.. Convert.FromBase64String((string)json["publicKey"]!)], DayOf(json["from"]), json["until"] is { } until ? DayOf(until) : null, revoked);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static DateOnly DayOf(JsonNode? json) => DateOnly.ParseExact((string)json!, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
