using System.Buffers.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ramwright.Paper.Signing;

/// <summary>
/// A JSON document with the name of a house key and its signature (ES256 as base64url: r and s, RFC 7518, 3.4) as its last two members.
/// Signed is the canonical form of everything but the signature, so the document may be indented or not.
/// </summary>
internal static class SignedJson
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static byte[] Write(JsonObject document, HouseKey key)
    {
        document["key"] = key.Id.Hex;
        document["signature"] = Base64Url.EncodeToString(key.Sign(CanonicalJson.Write(document)));
        return JsonSerializer.SerializeToUtf8Bytes(document, Readable);
    }

    /// <summary>Which key is said to have signed what; null when the document carries no signature.</summary>
    public static (string Key, byte[] Message, byte[] Signature)? Read(JsonObject document)
    {
        if (document["key"] is not JsonValue key || document["signature"] is not JsonValue signature || key.GetValueKind() != JsonValueKind.String || signature.GetValueKind() != JsonValueKind.String)
            return null;
        var text = (string)signature!;
        if (!Base64Url.IsValid(text))
            return ((string)key!, [], []);
        var bare = document.DeepClone().AsObject();
        bare.Remove("signature");
        return ((string)key!, CanonicalJson.Write(bare), Base64Url.DecodeFromChars(text));
    }
}
