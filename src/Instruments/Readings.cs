using Ramwright.Instruments.Text;
using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments;

/// <summary>Reads peaks from text: files with separated columns, and what is typed into a form. Never throws on what is in the text.</summary>
public static class Readings
{
    /// <summary>Longest file read, in bytes.</summary>
    public const int LargestFileBytes = 5_000_000;

    /// <summary>Reads a file of peaks from its bytes, UTF-8.</summary>
    /// <param name="fileName">For the places of mistakes only; nothing is opened.</param>
    public static ReadingsAnswer Read(string fileName, ReadOnlySpan<byte> bytes, ReadingsOptions? options = null)
    {
        var mistakes = new MistakeList(fileName);
        return SourceText.Decode(bytes, mistakes) is { } text ? Table(text, options, mistakes) : new ReadingsAnswer.Refused(mistakes.InOrder());
    }

    /// <summary>Reads a file of peaks from its text.</summary>
    /// <param name="fileName">For the places of mistakes only; nothing is opened.</param>
    public static ReadingsAnswer Read(string fileName, string text, ReadingsOptions? options = null) => Table(text, options, new MistakeList(fileName));

    /// <summary>Reads peaks typed one after the other, separated by blanks, line breaks or <c>;</c>, decimals with point or comma.</summary>
    /// <param name="field">What the places of mistakes call the text.</param>
    public static ReadingsAnswer ReadTyped(string text, ReadingUnit unit, Area? ramArea = null, string field = "typed")
    {
        var mistakes = new MistakeList(field);
        return SourceText.Lines(text, mistakes) is { } lines ? TypedPeaks.Read(lines, unit, ramArea, mistakes) : new ReadingsAnswer.Refused(mistakes.InOrder());
    }

    private static ReadingsAnswer Table(string text, ReadingsOptions? options, MistakeList mistakes) =>
        SourceText.Lines(text, mistakes) is { } lines ? PeakTable.Read(lines, options ?? new(), mistakes) : new ReadingsAnswer.Refused(mistakes.InOrder());
}
