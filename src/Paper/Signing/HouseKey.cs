using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Ramwright.Paper.Signing;

/// <summary>
/// The key that the house signs its papers with: ECDSA on the curve P-256 with SHA-256 (FIPS 186-5), and a certificate that it signed itself,
/// because readers of PDF ask for one. The certificate vouches for nothing: trust comes from the list of the house's keys.
/// </summary>
public sealed class HouseKey : IDisposable
{
    /// <summary>A certificate has to end some day; what ends a key here is the list.</summary>
    private const int CertificateYears = 30;

    private readonly ECDsa secret;

    private HouseKey(ECDsa secret, byte[] certificate)
    {
        this.secret = secret;
        PublicKey = secret.ExportSubjectPublicKeyInfo();
        Certificate = certificate;
        Id = KeyId.Of(PublicKey);
    }

    public KeyId Id { get; }

    /// <summary>SubjectPublicKeyInfo, DER.</summary>
    public byte[] PublicKey { get; }

    /// <summary>X.509, DER.</summary>
    public byte[] Certificate { get; }

    /// <summary>A new key.</summary>
    /// <param name="house">Name of the house, for the certificate.</param>
    public static HouseKey Make(string house, DateTimeOffset from)
    {
        var made = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var name = new X500DistinguishedNameBuilder();
        name.AddCommonName($"{(house.Length is > 0 and <= 40 ? house : "the house")}: key for papers");
        var request = new CertificateRequest(name.Build(), made, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature | X509KeyUsageFlags.NonRepudiation, critical: true));
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, 0, critical: true));
        using var certificate = request.CreateSelfSigned(from.AddDays(-1), from.AddYears(CertificateYears));
        return new(made, certificate.RawData);
    }

    /// <summary>Key and certificate as PEM (RFC 7468), the key as PKCS #8. Secret.</summary>
    public string ToPem() => secret.ExportPkcs8PrivateKeyPem() + "\n" + PemEncoding.WriteString("CERTIFICATE", Certificate) + "\n";

    /// <summary>The key in a text; null when there is none, or its certificate is not its own.</summary>
    public static HouseKey? FromPem(string pem)
    {
        var made = ECDsa.Create();
        try
        {
            made.ImportFromPem(PemOf(pem, "PRIVATE KEY"));
            using var certificate = X509Certificate2.CreateFromPem(PemOf(pem, "CERTIFICATE"));
            var key = new HouseKey(made, certificate.RawData);
            if (made.KeySize == 256 && certificate.PublicKey.ExportSubjectPublicKeyInfo().AsSpan().SequenceEqual(key.PublicKey))
                return key;
        }
        catch (Exception bad) when (bad is CryptographicException or ArgumentException)
        {
            // It is no key; the caller says so with the name of the file.
        }

        made.Dispose();
        return null;
    }

    /// <summary>The signature as r and s, 32 bytes each (IEEE P1363), as codes and JSON carry it.</summary>
    public byte[] Sign(ReadOnlySpan<byte> message) => secret.SignData(message, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);

    /// <summary>The same as a DER sequence (RFC 3279, 2.2.3), as CMS carries it.</summary>
    internal byte[] SignDer(ReadOnlySpan<byte> message) => secret.SignData(message, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);

    public void Dispose() => secret.Dispose();

    private static ReadOnlySpan<char> PemOf(string text, string label)
    {
        var (from, to) = ($"-----BEGIN {label}-----", $"-----END {label}-----");
        var start = text.IndexOf(from, StringComparison.Ordinal);
        var end = start < 0 ? -1 : text.IndexOf(to, start, StringComparison.Ordinal);
        return end < 0 ? throw new ArgumentException($"There is no {label} in it.", nameof(text)) : text.AsSpan(start, end + to.Length - start);
    }
}
