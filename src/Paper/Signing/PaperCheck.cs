using System.Text;

namespace Ramwright.Paper.Signing;

/// <summary>Whether a paper is what the house gave out, as of the moment of a list.</summary>
public abstract record PaperAnswer
{
    private PaperAnswer() { }

    /// <param name="Paper">What the house signed.</param>
    public sealed record Genuine(ProofCode Paper) : PaperAnswer;

    /// <summary>Genuine, but another took its place.</summary>
    public sealed record Superseded(ProofCode Paper, string By) : PaperAnswer;

    /// <summary>Signed by a key that the house no longer stands by: whoever had the key may have written it, on whatever day it bears.</summary>
    public sealed record Revoked(ProofCode Paper, KeyId Key, Revocation Why) : PaperAnswer;

    public sealed record Altered(string What) : PaperAnswer;

    /// <summary>Not signed, or by no key on the list: nothing can be said.</summary>
    public sealed record Unknown(string What) : PaperAnswer;

    /// <summary>It is no paper that could be checked.</summary>
    public sealed record NoPaper(string What) : PaperAnswer;
}

/// <summary>
/// Checks a proof report off line: the PDF file, its result as JSON, or the text of its code. What lies inside another is under
/// the same key: or whoever has a revoked one could put an honest result into pages of his own.
/// </summary>
public static class PaperCheck
{
    /// <summary>A larger file is none of ours.</summary>
    public const int LargestBytes = 16 * 1024 * 1024;

    public static PaperAnswer Of(ReadOnlySpan<byte> paper, KeyList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (paper.Length > LargestBytes)
            return new PaperAnswer.NoPaper("it is larger than any report of a house");
        if (paper.StartsWith("%PDF-"u8))
            return OfPdf(paper.ToArray(), list);
        var text = Encoding.UTF8.GetString(paper).TrimStart('\uFEFF', ' ', '\n', '\r', '\t');
        if (text.StartsWith('{'))
            return OfResult(Encoding.UTF8.GetBytes(text), list, null);
        return text.StartsWith(ProofCode.Mark, StringComparison.OrdinalIgnoreCase)
            ? OfCode(text, list, null)
            : new PaperAnswer.NoPaper("it is neither a PDF file, nor a result as JSON, nor the text of a code, which begins with RW1:");
    }

    private static PaperAnswer OfPdf(byte[] file, KeyList list) => SignedPdf.Read(file) switch
    {
        SignedPdfRead.NotSigned => new PaperAnswer.Unknown("the file carries no signature of a house"),
        SignedPdfRead.Broken broken => new PaperAnswer.Altered(broken.What),
        SignedPdfRead.Whole whole when list.Find(KeyId.Of(whole.PublicKey).Hex) is { } key && key.PublicKey.AsSpan().SequenceEqual(whole.PublicKey) =>
            whole.Result is { } result ? OfResult(result, list, key) : new PaperAnswer.Unknown("the file carries no result that could be read"),
        SignedPdfRead.Whole whole => new PaperAnswer.Unknown($"the list does not have its key {KeyId.Of(whole.PublicKey)}"),
        _ => throw new InvalidOperationException("A file is unsigned, broken or whole."),
    };

    /// <param name="file">The key that the file around it is signed with; null when it comes by itself.</param>
    private static PaperAnswer OfResult(byte[] utf8, KeyList list, ListedKey? file)
    {
        if (CanonicalJson.Read(utf8) is not { } json || (json["schema"] as System.Text.Json.Nodes.JsonValue)?.ToString() != ProofResult.Schema)
            return new PaperAnswer.NoPaper($"it is no JSON document of the schema {ProofResult.Schema}");
        if (SignedJson.Read(json) is not { } signed)
            return new PaperAnswer.Unknown("the result carries no signature of a house");
        if (list.Find(signed.Key) is not { } key)
            return new PaperAnswer.Unknown($"the list does not have its key {signed.Key}");
        if (!key.Signed(signed.Message, signed.Signature))
            return new PaperAnswer.Altered("something in the result was changed after it was signed");
        return file is not null && file != key
            ? new PaperAnswer.Altered("the file and the result in it are signed with two keys")
            : OfCode(json["code"]?.ToString() ?? "", list, key);
    }

    /// <param name="result">The key that the result around it is signed with; null when it comes by itself.</param>
    private static PaperAnswer OfCode(string text, KeyList list, ListedKey? result)
    {
        if (ProofCode.Read(text) is not { } read)
            return new PaperAnswer.NoPaper("the code's text is cut short or has a sign that no code has");
        if (list.Find(read.Code.Key) is not { } key)
            return new PaperAnswer.Unknown(KeyId.TryRead(read.Code.Key, out var id) ? $"the list does not have its key {id}" : "its key has no name that a key can have");
        if (!key.Signed(read.Code.Message, read.Signature))
            return new PaperAnswer.Altered("the code was changed after it was signed");
        if (result is not null && result != key)
            return new PaperAnswer.Altered("the result and the code in it are signed with two keys");
        if (key.Revoked is { } why)
            return new PaperAnswer.Revoked(read.Code, key.Id, why);
        return list.ReplacedBy(read.Code.Number) is { } by ? new PaperAnswer.Superseded(read.Code, by) : new PaperAnswer.Genuine(read.Code);
    }
}
