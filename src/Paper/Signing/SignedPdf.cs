using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.RegularExpressions;
using Ramwright.Paper.Pdf;

namespace Ramwright.Paper.Signing;

/// <summary>A file that travels inside a PDF file.</summary>
/// <param name="MediaType">Such as <c>application/json</c>.</param>
public sealed record Attachment(string Name, string MediaType, string Words, byte[] Bytes);

/// <summary>What came of reading a signed file.</summary>
internal abstract record SignedPdfRead
{
    private SignedPdfRead() { }

    public sealed record NotSigned : SignedPdfRead;

    public sealed record Broken(string What) : SignedPdfRead;

    /// <summary>Whole: every byte is under the signature of the certificate's key. Whose key that is, the list must say.</summary>
    public sealed record Whole(byte[] PublicKey, byte[]? Result) : SignedPdfRead;
}

/// <summary>
/// Puts attachments and a signature into a finished PDF file, and reads them back. The signature covers every byte but its own digits
/// (ISO 32000-1, 12.8.1); the attachments are associated files as PDF/A-3 has them (ISO 19005-3, 6.8; clause from memory).
/// </summary>
internal static partial class SignedPdf
{
    /// <summary>Room for the signature, bytes; some 700 are used.</summary>
    private const int Room = 1536;

    /// <summary>Where one of these stands there was a signature, though none can be read.</summary>
    private static readonly string[] Traces = ["/Type/Sig", "/ByteRange", "ETSI.CAdES.detached", "/SigFlags"];

    public static byte[] Write(byte[] finished, HouseKey key, string signatory, DateTimeOffset at, ImmutableArray<Attachment> attachments)
    {
        using var update = new PdfUpdate(Part3(finished));
        var files = attachments.Select(a => (a.Name, Number: Attach(update, a, at))).OrderBy(f => f.Name, StringComparer.Ordinal).ToList();
        var (field, value) = (update.Reserve(), update.Reserve());
        var names = string.Concat(files.Select(f => $"({f.Name}) {f.Number} 0 R "));
        var references = string.Join(' ', files.Select(f => $"{f.Number} 0 R"));
        update.Extend(update.Root, $"/Names<</EmbeddedFiles<</Names[{names}]>>>>/AF[{references}]/AcroForm<</Fields[{field} 0 R]/SigFlags 3>>");
        var page = update.FirstPage();
        update.Extend(page, $"/Annots[{field} 0 R]");
        update.Put(field, $"<</Type/Annot/Subtype/Widget/FT/Sig/T(house)/F 132/Rect[0 0 0 0]/P {page} 0 R/V {value} 0 R>>");
        var before = "<</Type/Sig/Filter/Adobe.PPKLite/SubFilter/ETSI.CAdES.detached"
            + $"/Name{Words(signatory)}/Reason(released by this person, signed with the key of the house)/M({Moment(at)})";
        var range = $"/ByteRange[{0:0000000000} {0:0000000000} {0:0000000000} {0:0000000000}]";
        var start = update.Put(value, $"{before}{range}/Contents<{new string('0', 2 * Room)}>>>");
        var file = update.Close();
        Fill(file, (int)start + before.Length, (int)start + before.Length + range.Length + "/Contents".Length, key);
        return file;
    }

    public static SignedPdfRead Read(byte[] file)
    {
        var text = Encoding.Latin1.GetString(file);
        var found = Range().Matches(text);
        if (found.Count == 0)
            return Traces.Any(w => text.Contains(w, StringComparison.Ordinal))
                ? new SignedPdfRead.Broken("its signature cannot be read") : new SignedPdfRead.NotSigned();
        var range = found[^1];
        int Number(string name) => int.Parse(range.Groups[name].ValueSpan, CultureInfo.InvariantCulture);
        var (open, close, rest) = (Number("open"), Number("close"), Number("rest"));
        if (open != range.Index + range.Length - 1 || close != open + (2 * Room) + 2 || close + (long)rest != file.Length)
            return new SignedPdfRead.Broken("bytes were added, taken out or moved");
        var digits = text.Substring(open + 1, 2 * Room);
        if (text[close - 1] != '>' || digits.Any(c => !char.IsAsciiHexDigitLower(c)) || Cms.Read(Convert.FromHexString(digits)) is not { } cms)
            return new SignedPdfRead.Broken("its signature was changed");
        if (!Digest(file, open, close).AsSpan().SequenceEqual(cms.Digest))
            return new SignedPdfRead.Broken("bytes under its signature were changed");
        using var certificate = X509CertificateLoader.LoadCertificate(cms.Certificate);
        using var signer = certificate.GetECDsaPublicKey();
        if (signer is null || !signer.VerifyData(cms.Attributes, cms.Signature, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence))
            return new SignedPdfRead.Broken("its signature was changed");
        return new SignedPdfRead.Whole(certificate.PublicKey.ExportSubjectPublicKeyInfo(), ResultIn(file, text));
    }

    private static byte[] Digest(byte[] file, int open, int close)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(file, 0, open);
        hash.AppendData(file, close, file.Length - close);
        return hash.GetHashAndReset();
    }

    private static void Fill(byte[] file, int rangeAt, int open, HouseKey key)
    {
        var close = open + (2 * Room) + 2;
        Encoding.Latin1.GetBytes($"/ByteRange[{0:0000000000} {open:0000000000} {close:0000000000} {file.Length - close:0000000000}]").CopyTo(file, rangeAt);
        var signature = Cms.Sign(key, Digest(file, open, close));
        if (signature.Length > Room)
            throw new InvalidOperationException($"A signature of {signature.Length} bytes does not fit into {Room}.");
        Encoding.Latin1.GetBytes(Convert.ToHexStringLower(signature)).CopyTo(file, open + 1);
    }

    private static int Attach(PdfUpdate update, Attachment file, DateTimeOffset at)
    {
        var (stream, spec) = (update.Reserve(), update.Reserve());
        var type = file.MediaType.Replace("/", "#2F", StringComparison.Ordinal);
        update.Put(stream, $"/Type/EmbeddedFile/Subtype/{type}/Params<</Size {file.Bytes.Length}/ModDate({Moment(at)})>>", file.Bytes);
        update.Put(spec, $"<</Type/Filespec/F({file.Name})/UF({file.Name})/Desc{Words(file.Words)}/AFRelationship/Data/EF<</F {stream} 0 R/UF {stream} 0 R>>>>");
        return spec;
    }

    /// <summary>The result that travels inside; null when there is none.</summary>
    private static byte[]? ResultIn(byte[] file, string text)
    {
        if (Result().Match(text) is not { Success: true } head)
            return null;
        var (at, length) = (head.Index + head.Length, int.Parse(head.Groups["length"].ValueSpan, CultureInfo.InvariantCulture));
        return at + length <= file.Length ? file[at..(at + length)] : null;
    }

    /// <summary>The writer marks a file as PDF/A-1, which may carry no attachments; the third part is the one that may carry any.</summary>
    private static byte[] Part3(byte[] finished)
    {
        var marked = finished.AsSpan().ToArray();
        var at = marked.AsSpan().IndexOf("<pdfaid:part>1<"u8);
        if (at >= 0)
            marked[at + "<pdfaid:part>".Length] = (byte)'3';
        return marked;
    }

    /// <summary>A text string as UTF-16 in hexadecimal digits (ISO 32000-1, 7.9.2.2): whatever the name, nothing needs escaping.</summary>
    private static string Words(string words) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(words))}>";

    private static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("'D:'yyyyMMddHHmmss'Z'", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"/ByteRange\[0000000000 (?<open>\d{10}) (?<close>\d{10}) (?<rest>\d{10})\]/Contents<", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Range();

    [GeneratedRegex(@"<</Type/EmbeddedFile/Subtype/application#2Fjson/Params<<[^<>]*>>/Length (?<length>\d{1,9})>>\nstream\n", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Result();
}
