using System.Diagnostics.CodeAnalysis;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Store;

/// <summary>The hash of the last entry: whoever knows it can tell whether anything before it was altered.</summary>
/// <param name="Number">The entry it belongs to; zero for an empty ledger.</param>
/// <param name="Hash">SHA-256, 64 lower-case hex digits; all zeros for an empty ledger.</param>
public readonly record struct LedgerHead(EntryNumber Number, string Hash)
{
    /// <summary>Before the first entry.</summary>
    public static LedgerHead Empty { get; } = new(EntryNumber.None, new('0', 64));

    /// <summary>The first eight digits in two groups, as print has room for: <c>9f3c 1ae0</c>.</summary>
    public string Short => $"{Hash[..4]} {Hash[4..8]}";

    /// <summary>Takes a hash of 8 to 64 hex digits, blanks allowed, as typed off a paper; gives it back in lower case without blanks.</summary>
    public static bool TryReadHash([NotNullWhen(true)] string? text, [NotNullWhen(true)] out string? prefix)
    {
        prefix = text?.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();
        if (prefix is { Length: >= 8 and <= 64 } && prefix.All(char.IsAsciiHexDigitLower))
            return true;
        prefix = null;
        return false;
    }

    public override string ToString() => $"{Short} (entry {Number})";
}
