using System.Collections.Immutable;
using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Text;

/// <summary>Reads peaks typed one after the other.</summary>
internal static class TypedPeaks
{
    public static ReadingsAnswer Read(IReadOnlyList<TextLine> lines, ReadingUnit unit, Area? ramArea, MistakeList mistakes)
    {
        if (unit == ReadingUnit.Kilonewton && ramArea is not { SquareMetres: > 0 })
        {
            mistakes.AddWhole(ReadingCodes.UnitNeedsArea, "the peaks are forces in kN, and no ram area is known to turn them into pressures", "take a service model that states the ram diameter, or give the peaks as pressures");
            return new ReadingsAnswer.Refused(mistakes.InOrder());
        }
        var peaks = new PeakCell("the peak", unit, ramArea, heldBack: default, mistakes) { EitherMark = true };
        var taken = ImmutableArray.CreateBuilder<Reading>();
        foreach (var line in lines)
        {
            foreach (var token in Tokens(line.Text))
            {
                if (IsAmbiguous(token.Text))
                    mistakes.Add(line, token, ReadingCodes.AmbiguousSeparator, $"in '{Showable.Short(token.Text)}' the comma could stand between readings or before decimals", "put a blank between readings");
                else if (peaks.Read(line, token) is { } peak)
                    taken.Add(new(taken.Count + 1, peak, line.Number));
            }
        }
        if (mistakes.IsEmpty && taken.Count == 0)
            mistakes.AddWhole(ReadingCodes.NoReading, "no reading was typed", "type the peaks one after the other, with a blank between them");
        return mistakes.IsEmpty ? new ReadingsAnswer.Taken(taken.ToImmutable()) { Unit = unit } : new ReadingsAnswer.Refused(mistakes.InOrder());
    }

    /// <summary>What stands between blanks and semicolons; a comma before a blank separates too.</summary>
    private static IEnumerable<Field> Tokens(string line)
    {
        var start = 0;
        for (var i = 0; i <= line.Length; i++)
        {
            if (i < line.Length && !char.IsWhiteSpace(line[i]) && line[i] != ';')
                continue;
            var token = line[start..i].TrimEnd(',');
            if (token.Length > 0)
                yield return new(token, start + 1, token.Length, Quoted: false);
            start = i + 1;
        }
    }

    /// <summary>More than one comma, or one with three digits or more behind it, or a comma beside a point.</summary>
    private static bool IsAmbiguous(string token) => token.Split(',') switch
    {
        [_] => false,
        [_, var tail] => (tail.Length >= 3 && tail.All(char.IsAsciiDigit)) || token.Contains('.', StringComparison.Ordinal),
        _ => true,
    };
}
