using System.Buffers.Binary;
using System.Text;

namespace Ramwright.Paper.Lettering;

/// <summary>One face of B612 (SIL Open Font License 1.1, shipped with the program): its bytes, the width of words, and which signs it has.</summary>
/// <remarks>Reads the tables head, hhea, hmtx and cmap format 4 (OpenType specification 1.9). No kerning, as the PDF writer sets none.</remarks>
public sealed class Typeface
{
    private static readonly Lazy<Typeface> LazyRegular = new(() => new("B612-Regular"));
    private static readonly Lazy<Typeface> LazyBold = new(() => new("B612-Bold"));
    private static readonly Lazy<Typeface> LazyItalic = new(() => new("B612-Italic"));
    private static readonly Lazy<Typeface> LazyMono = new(() => new("B612Mono-Regular"));
    private readonly Dictionary<int, ushort> advances = [];
    private readonly double unitsPerEm;

    private Typeface(string name)
    {
        Name = name;
        using var from = typeof(Typeface).Assembly.GetManifestResourceStream(name + ".ttf")
            ?? throw new InvalidOperationException($"The face {name} is missing from the program.");
        Bytes = new byte[from.Length];
        from.ReadExactly(Bytes);
        var tables = Tables(Bytes);
        unitsPerEm = U16(tables["head"] + 18);
        Ascent = S16(tables["hhea"] + 4) / unitsPerEm;
        var metrics = U16(tables["hhea"] + 34);
        ReadCharacters(tables["cmap"], tables["hmtx"], metrics);
    }

    public static Typeface Regular => LazyRegular.Value;

    public static Typeface Bold => LazyBold.Value;

    public static Typeface Italic => LazyItalic.Value;

    public static Typeface Mono => LazyMono.Value;

    public string Name { get; }

    /// <summary>The font file.</summary>
    public byte[] Bytes { get; }

    /// <summary>Ascent as a share of the size.</summary>
    public double Ascent { get; }

    /// <summary>Whether the face can write a sign.</summary>
    public bool Has(Rune sign) => advances.ContainsKey(sign.Value);

    /// <summary>Width of one line of words at a size, in the unit of the size. Signs that the face lacks count as half an em.</summary>
    public double WidthOf(ReadOnlySpan<char> words, double size)
    {
        long units = 0;
        foreach (var rune in words.EnumerateRunes())
            units += advances.TryGetValue(rune.Value, out var advance) ? advance : (int)(unitsPerEm / 2);
        return units * size / unitsPerEm;
    }

    private static Dictionary<string, int> Tables(byte[] file)
    {
        var found = new Dictionary<string, int>(StringComparer.Ordinal);
        var count = BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(4));
        for (var i = 0; i < count; i++)
        {
            var entry = file.AsSpan(12 + (16 * i), 16);
            found[Encoding.ASCII.GetString(entry[..4])] = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
        }

        return found;
    }

    private void ReadCharacters(int cmap, int hmtx, int metrics)
    {
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var table = cmap + (int)BinaryPrimitives.ReadUInt32BigEndian(Bytes.AsSpan(cmap + 4 + (8 * i) + 4));
            if (U16(table) != 4)
                continue;
            var segments = U16(table + 6) / 2;
            for (var s = 0; s < segments; s++)
                ReadSegment(table + 14 + (2 * s), segments, hmtx, metrics);
            return;
        }
    }

    private void ReadSegment(int end, int segments, int hmtx, int metrics)
    {
        var start = end + 2 + (2 * segments);
        var delta = start + (2 * segments);
        var range = delta + (2 * segments);
        for (int c = U16(start); c <= U16(end) && c != 0xFFFF; c++)
        {
            var glyph = U16(range) == 0 ? c : U16(range + U16(range) + (2 * (c - U16(start))));
            glyph = glyph == 0 ? 0 : (glyph + U16(delta)) & 0xFFFF;
            if (glyph != 0)
                advances[c] = U16(hmtx + (4 * Math.Min(glyph, metrics - 1)));
        }
    }

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(Bytes.AsSpan(at));

    private short S16(int at) => BinaryPrimitives.ReadInt16BigEndian(Bytes.AsSpan(at));
}
