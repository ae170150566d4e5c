using System.Globalization;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Text;

/// <summary>Watches that run numbers go up by one: a run that is left out would make a series look better than it was.</summary>
internal sealed class RunOrder(MistakeList mistakes)
{
    private readonly Dictionary<int, int> _lineOf = [];
    private int? _highest;

    /// <summary>The number of a run cell, or null with a mistake added.</summary>
    public int? Read(TextLine line, Field cell)
    {
        if (!int.TryParse(cell.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var run))
        {
            mistakes.Add(line, cell, ReadingCodes.BadRunNumber, cell.Text.Length == 0 ? "the run has no number" : $"the run number is '{Showable.Short(cell.Text)}', which is no whole number", "number the runs 1, 2, 3 ... or leave the column out");
            return null;
        }
        if (_lineOf.TryGetValue(run, out var first))
            mistakes.Add(line, cell, ReadingCodes.DuplicateRun, $"run {run} stands here again; it stood in line {first}", "give each run its own number; take out a line that was copied twice");
        else if (_highest is { } high && run < high)
            mistakes.Add(line, cell, ReadingCodes.RunOutOfOrder, $"run {run} stands after run {high}", "write the runs in the order they were made");
        else if (_highest is { } before && run > (long)before + 1)
            mistakes.Add(line, cell, ReadingCodes.RunGap, run == (long)before + 2 ? $"run {before + 1} is missing" : $"runs {before + 1L} to {run - 1} are missing", "add the missing run; if it was void, keep its line and write the cause in a column 'void'");
        _lineOf.TryAdd(run, line.Number);
        _highest = Math.Max(run, _highest ?? run);
        return run;
    }
}
