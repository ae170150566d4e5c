using System.Text;

namespace Ramwright.Paper.Signing;

/// <summary>Bytes as capitals and digits (RFC 4648, 6, without padding): small in a QR code, and proof against line breaks, blanks and small letters.</summary>
internal static class Base32
{
    private const string Signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    public static string Write(ReadOnlySpan<byte> bytes)
    {
        var to = new StringBuilder();
        var (held, bits) = (0, 0);
        foreach (var b in bytes)
        {
            (held, bits) = ((held << 8) | b, bits + 8);
            while (bits >= 5)
            {
                bits -= 5;
                to.Append(Signs[(held >> bits) & 31]);
            }

            held &= (1 << bits) - 1;
        }

        if (bits > 0)
            to.Append(Signs[(held << (5 - bits)) & 31]);
        return to.ToString();
    }

    /// <summary>The bytes; null when a sign is none of the 32, or what is left over is not nought.</summary>
    public static byte[]? Read(ReadOnlySpan<char> text)
    {
        var to = new List<byte>(text.Length * 5 / 8);
        var (held, bits) = (0, 0);
        foreach (var c in text)
        {
            var value = Signs.IndexOf(char.ToUpperInvariant(c), StringComparison.Ordinal);
            if (value < 0)
                return null;
            (held, bits) = ((held << 5) | value, bits + 5);
            if (bits < 8)
                continue;
            bits -= 8;
            to.Add((byte)(held >> bits));
            held &= (1 << bits) - 1;
        }

        return held == 0 && bits < 5 ? [.. to] : null;
    }
}
