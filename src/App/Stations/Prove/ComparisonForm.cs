using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove;

/// <summary>A comparison as it is typed: one pair a line, reference and tool, with <c>down</c> where the pressure was lowered to it.</summary>
public sealed class ComparisonForm
{
    private const int MostPoints = 200;

    /// <summary>Readings of the reference that lie closer than this share of the largest are one level.</summary>
    private const double SameLevel = 0.03;

    public string? Reference { get; set; }
    public string? Allowed { get; set; }
    public string? Resolution { get; set; }
    public string? Points { get; set; }

    /// <summary>What was compared, or null with every mistake noted.</summary>
    public ComparisonWish? Read(Words words, FormMistakes mistakes)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(mistakes);
        if (!InstrumentId.TryParse(Reference, out var id))
            mistakes.Add("reference", "No reference was chosen.", "Choose the gauge at the pressure port.");
        var allowed = Figures.ReadPressure(Allowed, words.PressureUnit, "allowed", mistakes);
        var step = string.IsNullOrWhiteSpace(Resolution) ? null : Figures.ReadPressure(Resolution, words.PressureUnit, "resolution", mistakes);
        var pairs = Pairs(Points, words.PressureUnit, "points", MeasuredKind.Pressure, mistakes);
        return mistakes.Count > 0 ? null : new ComparisonWish(id, allowed!.Value, step, Levelled(pairs));
    }

    /// <summary>The loops of a force cell: up and down, one a line.</summary>
    public static ImmutableArray<ForcePair> Loops(string? text, string unit, FormMistakes mistakes) =>
        [.. Pairs(text, unit, "loops", MeasuredKind.Force, mistakes).Select(p => new ForcePair(Force.FromNewtons(p.First), Force.FromNewtons(p.Second)))];

    private static List<(double First, double Second, bool Down)> Pairs(string? text, string unit, string field, MeasuredKind kind, FormMistakes mistakes)
    {
        var lines = (text ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (lines.Length is 0 or > MostPoints)
            mistakes.Add(field, lines.Length == 0 ? "Nothing was written down." : string.Create(CultureInfo.InvariantCulture, $"{lines.Length} lines are more than the {MostPoints} that this form takes."), "Write one pair to a line.");
        List<(double, double, bool)> pairs = [];
        foreach (var (i, line) in lines.Take(MostPoints).Index())
        {
            var down = line.EndsWith("down", StringComparison.OrdinalIgnoreCase);
            var bare = down ? line[..^4] : line.EndsWith("up", StringComparison.OrdinalIgnoreCase) ? line[..^2] : line;
            var cells = bare.Split(bare.Contains(';', StringComparison.Ordinal) ? [';'] : [' ', '\t'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            var found = new FormMistakes();
            var read = cells.Length == 2 ? cells.Select(c => Figures.Read(c, unit, field, found)).ToArray() : [];
            if (read is [{ } first, { } second] && first.Kind == kind && second.Kind == kind && first.Si >= 0 && second.Si >= 0)
                pairs.Add((first.Si, second.Si, down));
            else
                mistakes.Add(field, string.Create(CultureInfo.InvariantCulture, $"Line {i + 1}, '{(line.Length > 40 ? line[..40] + " …" : line)}', is no pair."), $"Write two figures in {unit} with a semicolon between.");
        }

        return pairs;
    }

    private static ImmutableArray<SensorPoint> Levelled(List<(double Reference, double Tool, bool Down)> pairs)
    {
        var gap = SameLevel * pairs.Max(p => p.Reference);
        var sorted = pairs.Select(p => p.Reference).Order().ToList();
        int LevelOf(double reference) => sorted.Zip(sorted.Skip(1), (low, high) => (low, high)).Count(p => p.high <= reference && p.high - p.low > gap);
        return [.. pairs.Select(p => new SensorPoint(LevelOf(p.Reference), p.Reference, p.Tool, !p.Down))];
    }
}
