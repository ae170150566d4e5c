using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Calibration;
using Ramwright.Records.Events;

namespace Ramwright.App.House.Instruments;

/// <summary>The points of a certificate as they are typed: one a line, <c>reading; reference</c> or <c>reading; reference; standard uncertainty</c>.</summary>
public static class CertificatePoints
{
    private const string Field = "Points";
    private const int MostPoints = 200;

    /// <summary>The points in SI; empty where none were typed, null with every mistake noted.</summary>
    /// <param name="unit">Of every figure that bears none of its own.</param>
    /// <param name="expanded">Whose quantity the points must be of.</param>
    public static ImmutableArray<CalibrationPoint>? Read(string? text, string unit, MeasuredValue? expanded, FormMistakes mistakes)
    {
        ArgumentNullException.ThrowIfNull(mistakes);
        var lines = (text ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var before = mistakes.Count;
        if (lines.Length > MostPoints)
        {
            mistakes.Add(Field, string.Create(CultureInfo.InvariantCulture, $"{lines.Length} points are more than the {MostPoints} that this form takes."), "Leave out points far from where the instrument is used.");
            return null;
        }

        var points = ImmutableArray.CreateBuilder<CalibrationPoint>();
        foreach (var (i, line) in lines.Index())
        {
            if (Point(line, i + 1, unit, expanded, mistakes) is { } point)
                points.Add(point);
        }

        if (points.Count > 0 && points.Count != points.Count(p => p.Standard is null) && points.Any(p => p.Standard is null))
            mistakes.Add(Field, "Some points state an uncertainty and some do not.", "State it for every point, or for none.");
        return mistakes.Count > before ? null : points.ToImmutable();
    }

    private static CalibrationPoint? Point(string line, int number, string unit, MeasuredValue? expanded, FormMistakes mistakes)
    {
        var cells = line.Split(line.Contains(';', StringComparison.Ordinal) ? [';'] : [' ', '\t'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var found = new FormMistakes();
        var read = cells.Length is 2 or 3 ? cells.Select(c => Figures.Read(c, unit, Field, found)).ToArray() : [];
        if (read.Length == 0 || found.Count > 0 || read.Any(r => r is null))
            mistakes.Add(Field, string.Create(CultureInfo.InvariantCulture, $"Line {number}, '{(line.Length > 40 ? line[..40] + " …" : line)}', is no point."), "Write reading; reference, and if the certificate states it the standard uncertainty of that comparison.");
        else if (expanded is { } of && read.Any(r => r!.Value.Kind != of.Kind))
            mistakes.Add(Field, string.Create(CultureInfo.InvariantCulture, $"Line {number} is another quantity than the uncertainty above."), $"Write it in {unit}.");
        else if (read is [_, _, { Si: <= 0 }])
            mistakes.Add(Field, string.Create(CultureInfo.InvariantCulture, $"Line {number}: the uncertainty is not above zero."), "Write a standard uncertainty, or leave it out of every line.");
        else
            return new CalibrationPoint(read[0]!.Value.Si, read[1]!.Value.Si, read.Length > 2 ? read[2]!.Value.Si : null);
        return null;
    }
}
