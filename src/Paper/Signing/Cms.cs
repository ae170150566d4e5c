using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Ramwright.Paper.Signing;

/// <summary>What a signature in a PDF file says: who, over what digest, and the signature itself.</summary>
/// <param name="Certificate">X.509, DER.</param>
/// <param name="Digest">SHA-256 of the signed bytes of the file.</param>
/// <param name="Attributes">The attributes that are signed, as the DER set over which the signature goes.</param>
/// <param name="Signature">DER sequence of r and s.</param>
internal sealed record CmsParts(byte[] Certificate, byte[] Digest, byte[] Attributes, byte[] Signature);

/// <summary>
/// The detached signature of a PDF file: SignedData (RFC 5652, 5) with one signer, ECDSA with SHA-256 (RFC 5754, 3.2) and the three signed attributes
/// content type, message digest and signing certificate (RFC 5035, 3), as the baseline of ETSI EN 319 142-1 asks (from memory). It is written in
/// one form only, and only that form is read: nothing outside the signed attributes is left that could be changed unseen.
/// </summary>
internal static class Cms
{
    private const string Data = "1.2.840.113549.1.7.1", SignedData = "1.2.840.113549.1.7.2";
    private const string ContentType = "1.2.840.113549.1.9.3", MessageDigest = "1.2.840.113549.1.9.4", SigningCertificate = "1.2.840.113549.1.9.16.2.47";
    private const string Sha256 = "2.16.840.1.101.3.4.2.1", EcdsaSha256 = "1.2.840.10045.4.3.2";
    private static readonly Asn1Tag First = new(TagClass.ContextSpecific, 0, isConstructed: true);

    public static byte[] Sign(HouseKey key, byte[] digest)
    {
        var attributes = Attributes(key.Certificate, digest);
        return Encode(new(key.Certificate, digest, attributes, key.SignDer(attributes)));
    }

    /// <summary>Reads a signature; null when it is not byte for byte in the one form.</summary>
    /// <param name="padded">The signature, and after it nothing but nought.</param>
    public static CmsParts? Read(byte[] padded)
    {
        try
        {
            AsnDecoder.ReadEncodedValue(padded, AsnEncodingRules.DER, out _, out _, out var length);
            var parts = Parse(padded.AsMemory(0, length));
            return padded.AsSpan(length).ContainsAnyExcept((byte)0) || !Encode(parts).AsSpan().SequenceEqual(padded.AsSpan(0, length)) ? null : parts;
        }
        catch (Exception bad) when (bad is AsnContentException or CryptographicException)
        {
            return null;
        }
    }

    private static CmsParts Parse(ReadOnlyMemory<byte> der)
    {
        var outer = new AsnReader(der, AsnEncodingRules.DER).ReadSequence();
        outer.ReadObjectIdentifier();
        var data = outer.ReadSequence(First).ReadSequence();
        data.ReadInteger();
        data.ReadEncodedValue();
        data.ReadEncodedValue();
        var certificate = data.ReadSetOf(First).ReadEncodedValue().ToArray();
        var signer = data.ReadSetOf().ReadSequence();
        signer.ReadInteger();
        signer.ReadEncodedValue();
        signer.ReadEncodedValue();
        var digest = Array.Empty<byte>();
        for (var set = signer.ReadSetOf(First); set.HasData;)
        {
            var attribute = set.ReadSequence();
            if (attribute.ReadObjectIdentifier() == MessageDigest)
                digest = attribute.ReadSetOf().ReadOctetString();
        }

        signer.ReadEncodedValue();
        return new(certificate, digest, Attributes(certificate, digest), signer.ReadOctetString());
    }

    private static byte[] Attributes(byte[] certificate, byte[] digest)
    {
        var to = new AsnWriter(AsnEncodingRules.DER);
        using (to.PushSetOf())
        {
            Attribute(to, ContentType, () => to.WriteObjectIdentifier(Data));
            Attribute(to, MessageDigest, () => to.WriteOctetString(digest));
            Attribute(to, SigningCertificate, () =>
            {
                using (to.PushSequence())
                using (to.PushSequence())
                using (to.PushSequence())
                    to.WriteOctetString(SHA256.HashData(certificate));
            });
        }

        return to.Encode();
    }

    private static void Attribute(AsnWriter to, string oid, Action value)
    {
        using (to.PushSequence())
        {
            to.WriteObjectIdentifier(oid);
            using (to.PushSetOf())
                value();
        }
    }

    private static byte[] Encode(CmsParts parts)
    {
        var to = new AsnWriter(AsnEncodingRules.DER);
        using (to.PushSequence())
        {
            to.WriteObjectIdentifier(SignedData);
            using (to.PushSequence(First))
            using (to.PushSequence())
            {
                to.WriteInteger(1);
                using (to.PushSetOf())
                    Algorithm(to, Sha256);
                using (to.PushSequence())
                    to.WriteObjectIdentifier(Data);
                using (to.PushSetOf(First))
                    to.WriteEncodedValue(parts.Certificate);
                using (to.PushSetOf())
                    Signer(to, parts);
            }
        }

        return to.Encode();
    }

    private static void Signer(AsnWriter to, CmsParts parts)
    {
        using var certificate = X509CertificateLoader.LoadCertificate(parts.Certificate);
        using (to.PushSequence())
        {
            to.WriteInteger(1);
            using (to.PushSequence())
            {
                to.WriteEncodedValue(certificate.IssuerName.RawData);
                to.WriteInteger(certificate.SerialNumberBytes.Span);
            }

            Algorithm(to, Sha256);
            var attributes = parts.Attributes.AsSpan().ToArray();
            attributes[0] = 0xA0; // [0] IMPLICIT instead of SET: the signature goes over the set (RFC 5652, 5.4)
            to.WriteEncodedValue(attributes);
            Algorithm(to, EcdsaSha256);
            to.WriteOctetString(parts.Signature);
        }
    }

    private static void Algorithm(AsnWriter to, string oid)
    {
        using (to.PushSequence())
            to.WriteObjectIdentifier(oid);
    }
}
