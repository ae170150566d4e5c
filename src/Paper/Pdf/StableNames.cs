using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Ramwright.Paper.Pdf;

/// <summary>
/// Takes chance out of a file, so that the same input gives the same bytes: the six letters before a subset font's name are counted up
/// (ISO 32000-1, 9.6.4 asks only that they differ within a file), and the file's identifiers (14.4) follow from its content.
/// All replacements keep their length.
/// </summary>
internal sealed partial class StableNames
{
    private const string NoUuid = "uuid:00000000-0000-0000-0000-000000000000";
    private static readonly string NoId = new('0', 32);
    private readonly Dictionary<string, string> tags = new(StringComparer.Ordinal);

    /// <summary>The text of an object outside its compressed stream, with counted font names and empty identifiers.</summary>
    public string Of(string text)
    {
        var fonts = FontTag().Replace(text, m => Counted(m.Groups["tag"].Value) + "+B612");
        return FileId().Replace(Uuid().Replace(fonts, NoUuid), $"/ID[<{NoId}><{NoId}>]");
    }

    /// <summary>Fills the empty identifiers from the hash of everything else.</summary>
    public static byte[] Identified(byte[] file)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(file))[..32];
        var uuid = $"uuid:{hash[..8]}-{hash[8..12]}-{hash[12..16]}-{hash[16..20]}-{hash[20..]}";
        Put(file, NoUuid, uuid);
        Put(file, $"/ID[<{NoId}><{NoId}>]", $"/ID[<{hash}><{hash}>]");
        return file;
    }

    private static void Put(Span<byte> file, string empty, string value)
    {
        var wanted = Encoding.ASCII.GetBytes(empty);
        var bytes = Encoding.ASCII.GetBytes(value);
        for (var at = file.IndexOf(wanted); at >= 0; at = file.IndexOf(wanted))
        {
            bytes.CopyTo(file[at..]);
            file = file[(at + bytes.Length)..];
        }
    }

    private string Counted(string tag)
    {
        if (!tags.TryGetValue(tag, out var counted))
            tags[tag] = counted = "RWRIG" + ((char)('A' + (tags.Count % 26))).ToString(CultureInfo.InvariantCulture);
        return counted;
    }

    [GeneratedRegex(@"(?<tag>[A-Z]{6})\+B612", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FontTag();

    [GeneratedRegex("uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Uuid();

    [GeneratedRegex(@"/ID\[<[0-9A-Fa-f]{32}><[0-9A-Fa-f]{32}>\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FileId();
}
