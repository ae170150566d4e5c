using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ramwright.App.CommandLine;
using Ramwright.Instruments;
using Ramwright.Instruments.PeakLists;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary>Peak lists as a command line gives them: files, typed numbers, or several on standard input with an empty line between.</summary>
internal static class PeakListInput
{
    /// <summary>The lists that could be read; each mistake of the others is added to <paramref name="found"/>.</summary>
    public static async Task<ImmutableArray<PeakList>> ReadAsync(IReadOnlyList<string> given, ReadingUnit unit, List<Mistake> found, CancellationToken cancel)
    {
        var lists = ImmutableArray.CreateBuilder<PeakList>();
        if (given.Count > Splice.MostLists)
            found.Add(TooMany(given.Count));
        foreach (var (text, i) in given.Take(Splice.MostLists).Select((t, i) => (t, i)))
        {
            if (IsTyped(text))
            {
                Add($"list {(i + 1).ToString(CultureInfo.InvariantCulture)}", Readings.ReadTyped(text, unit, field: $"list {(i + 1).ToString(CultureInfo.InvariantCulture)}"), lists, found);
                continue;
            }
            switch (await InputFile.ReadAsync(text, Readings.LargestFileBytes, cancel))
            {
                case InputFile.Missing missing:
                    found.Add(missing.Why);
                    break;
                case InputFile.Got pasted when text == "-":
                    Pasted(pasted.Bytes, unit, lists, found);
                    break;
                case InputFile.Got file:
                    Add(text, Readings.Read(text, file.Bytes, new ReadingsOptions { AssumedUnit = unit }), lists, found);
                    break;
            }
        }
        return lists.ToImmutable();
    }

    /// <summary>Lists as they are pasted, with an empty line between.</summary>
    public static ImmutableArray<PeakList> ReadPasted(string text, ReadingUnit unit, List<Mistake> found)
    {
        var lists = ImmutableArray.CreateBuilder<PeakList>();
        Pasted(Encoding.UTF8.GetBytes(text), unit, lists, found);
        return lists.ToImmutable();
    }

    /// <summary>Numbers with blanks between, not the name of a file.</summary>
    private static bool IsTyped(string text) => text.Any(char.IsAsciiDigit) && text.All(c => char.IsAsciiDigit(c) || c is ' ' or ';' or ',' or '.' or '-' or '\n' or '\t') && !File.Exists(text);

    private static void Pasted(byte[] bytes, ReadingUnit unit, ImmutableArray<PeakList>.Builder lists, List<Mistake> found)
    {
        var blocks = Encoding.UTF8.GetString(bytes).ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (blocks.Length is 0)
            found.Add(new Mistake(Place.Whole("-"), "there is no list on standard input", "paste the lists with an empty line between them", ReadingCodes.NoReading));
        if (blocks.Length > Splice.MostLists)
            found.Add(TooMany(blocks.Length));
        foreach (var (block, i) in blocks.Take(Splice.MostLists).Select((b, i) => (b, i)))
        {
            var name = $"list {(i + 1).ToString(CultureInfo.InvariantCulture)}";
            Add(name, block.All(c => char.IsAsciiDigit(c) || char.IsWhiteSpace(c) || c is ';' or ',' or '.' or '-')
                ? Readings.ReadTyped(block, unit, field: name)
                : Readings.Read(name, block, new ReadingsOptions { AssumedUnit = unit }), lists, found);
        }
    }

    private static void Add(string name, ReadingsAnswer read, ImmutableArray<PeakList>.Builder lists, List<Mistake> found)
    {
        if (read is ReadingsAnswer.Refused refused)
            found.AddRange(refused.Mistakes);
        else if (read is ReadingsAnswer.Taken { Void: [var first, ..] })
            found.Add(new Mistake(new Place(name, first.Line, 1, 0), "a run is marked void in a peak list: a memory keeps its peaks, whatever they are worth", "take the mark out, splice the lists, and mark the run in the series", "void-in-peak-list"));
        else if (read is ReadingsAnswer.Taken taken)
            lists.Add(new PeakList(name, [.. taken.Readings.Select(r => r.Peak)]));
    }

    private static Mistake TooMany(int count) => new(Place.Whole("LIST"), string.Create(CultureInfo.InvariantCulture, $"{count} lists; {Splice.MostLists} are the most that are joined"), "splice them in parts", "usage");
}
