using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Proving;

namespace Ramwright.Paper.Signing;

/// <summary>
/// What the code on a proof report says, signed, so that a print can be checked off line: <c>RW1:</c> and, in base 32, 64 bytes of signature
/// and the text. The text is 17 fields, one to a line, in the order of <see cref="Fields"/>; described in docs/reference/proof-code.md.
/// </summary>
public sealed record ProofCode
{
    public const string Mark = "RW1:";
    private const int FieldCount = 17;
    private const int SignatureLength = 64;
    private const int HeadLength = 16;

    /// <summary>A longer tool, serial or name is cut, with an ellipsis: the code must stay readable at 150 dots per inch.</summary>
    private const int LongestWords = 32;

    /// <summary>The fields as they stand in the text.</summary>
    public required ImmutableArray<string> Fields { get; init; }

    public string Number => Fields[0];

    public string Job => Fields[1];

    public string Tool => Fields[2];

    public string Serial => Fields[3];

    /// <summary>C conforms, N does not conform, U undecided.</summary>
    public string Verdict => Fields[4] switch { "C" => "conforms", "N" => "does not conform", _ => "undecided" };

    public string Runs => Fields[5];

    public string Mean => Fields[6];

    public string Spread => Fields[7];

    public string Limits => $"{Fields[8]}..{Fields[9]} {Fields[10]}";

    public string Issued => Fields[11];

    public string Signatory => Fields[12];

    public string LedgerEntry => Fields[13];

    public string LedgerHead => Fields[14];

    /// <summary>Number of the report that this one takes the place of; empty when of none.</summary>
    public string Replaces => Fields[15];

    public string Key => Fields[16];

    /// <summary>What is signed: the mark and the text, so that no other text of the house can be taken for it.</summary>
    public byte[] Message => Encoding.UTF8.GetBytes(Mark + Text);

    private string Text => string.Join('\n', Fields);

    public static ProofCode Of(ProofReportInput input, KeyId key)
    {
        ArgumentNullException.ThrowIfNull(input);
        var verdict = input.Verdict;
        return new()
        {
            Fields =
            [
                Clean(input.Number),
                Clean(input.Job.Number),
                Clean(input.Job.Tool),
                Clean(input.Job.Serial),
                verdict.Conformity switch { Conformity.Conforms => "C", Conformity.DoesNotConform => "N", _ => "U" },
                verdict.Runs.ToString(CultureInfo.InvariantCulture),
                Bar(verdict.Mean?.Bar, "0.0"),
                Bar(verdict.StandardDeviation?.Bar, "0.00"),
                Bar(input.Series.Limits.Min.Bar, "0.##"),
                Bar(input.Series.Limits.Max.Bar, "0.##"),
                "bar",
                input.Issued.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                Clean(input.ReleasedBy.Name),
                input.Ledger.Entry.ToString(CultureInfo.InvariantCulture),
                input.Ledger.Head[..Math.Min(HeadLength, input.Ledger.Head.Length)],
                Clean(input.Replaces),
                key.Hex,
            ],
        };
    }

    /// <summary>The code's text, signed.</summary>
    public string Sign(HouseKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Mark + Base32.Write([.. key.Sign(Message), .. Encoding.UTF8.GetBytes(Text)]);
    }

    /// <summary>Reads a code's text, blanks and line breaks passed over; null when it is none of ours.</summary>
    public static (ProofCode Code, byte[] Signature)? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var tight = string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
        if (!tight.StartsWith(Mark, StringComparison.OrdinalIgnoreCase) || Base32.Read(tight.AsSpan(Mark.Length)) is not { Length: > SignatureLength } bytes)
            return null;
        ImmutableArray<string> fields = [.. Encoding.UTF8.GetString(bytes.AsSpan(SignatureLength)).Split('\n')];
        return fields.Length == FieldCount ? (new() { Fields = fields }, bytes[..SignatureLength]) : null;
    }

    private static string Bar(double? bar, string form) => bar?.ToString(form, CultureInfo.InvariantCulture) ?? "";

    private static string Clean(string? words)
    {
        var clean = string.Concat((words ?? "").Where(c => !char.IsControl(c)));
        if (Encoding.UTF8.GetByteCount(clean) <= LongestWords)
            return clean;
        var cut = new StringBuilder();
        foreach (var rune in clean.EnumerateRunes())
        {
            if (Encoding.UTF8.GetByteCount(cut.ToString()) + rune.Utf8SequenceLength > LongestWords - 3)
                break;
            cut.Append(rune.ToString());
        }

        return cut.Append('…').ToString();
    }
}
