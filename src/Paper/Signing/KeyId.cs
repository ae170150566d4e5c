using System.Security.Cryptography;

namespace Ramwright.Paper.Signing;

/// <summary>
/// Names a house key: the first 16 hexadecimal digits of the SHA-256 of its public key, written as SubjectPublicKeyInfo (RFC 5280, 4.1.2.7).
/// A name finds a key in a list; it is no proof by itself.
/// </summary>
public readonly record struct KeyId
{
    public const int Length = 16;

    private KeyId(string hex) => Hex = hex;

    public string Hex { get; }

    public static KeyId Of(ReadOnlySpan<byte> publicKey) => new(Convert.ToHexStringLower(SHA256.HashData(publicKey))[..Length]);

    public static bool TryRead(string? text, out KeyId id)
    {
        var good = text is { Length: Length } && text.All(char.IsAsciiHexDigitLower);
        id = good ? new(text!) : default;
        return good;
    }

    public override string ToString() => Hex;
}
