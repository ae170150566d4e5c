using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Web.Parts;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>What a person may say of a recording beside its text.</summary>
/// <param name="Response">Time constant of the sensor; null as in the model.</param>
/// <param name="Column">Which column the pressure is.</param>
/// <param name="Scale">A unit of pressure, or a scale of the sensor.</param>
public sealed record SaidOfRecording(TimeSpan? Response, string? Column, string? Scale);

/// <summary>A recording as read for a page.</summary>
/// <param name="Parts">Its phases and moments.</param>
/// <param name="Answer">What it says.</param>
/// <param name="Notes">What was assumed on the way.</param>
public sealed record StrokeRead(Recording Recording, Segmentation Parts, IdentificationAnswer Answer, ImmutableArray<string> Notes);

/// <summary>Reads recordings for the bench, and keeps the last few readings.</summary>
public sealed class StrokeReader
{
    private const int MostKept = 8;

    private readonly ConcurrentDictionary<(string Sha, ServiceModel Model, SaidOfRecording Said), StrokeRead> kept = new();

    /// <summary>Reads a file; null with the mistakes noted.</summary>
    /// <param name="name">As the file was called.</param>
    public StrokeRead? Read(string path, string sha, string name, ServiceModel model, SaidOfRecording said, FormMistakes mistakes)
    {
        if (kept.TryGetValue((sha, model, said), out var known))
            return known;
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready { Tool: var tool })
        {
            mistakes.Add("file", "The model of this tool says too little of its behaviour to read a recording.", "ramwright check names the facts that are missing.");
            return null;
        }

        if (Options(said, mistakes) is not { } options)
            return null;
        using var bytes = File.OpenRead(path);
        switch (RecordingReader.Read(name, bytes, options))
        {
            case RecordingAnswer.WhichColumn which:
                mistakes.Add("column", $"Several columns could be the {which.Signal.ToString().ToLowerInvariant()}: {string.Join(", ", which.Names)}.", "Write which one it is.");
                return null;
            case RecordingAnswer.Refused refused:
                foreach (var mistake in refused.Mistakes.Take(12))
                    mistakes.Add("file", mistake.At.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $"Line {mistake.At.Line}: {mistake.What}") : Sentence.Head(mistake.What), mistake.Mend);
                return null;
            case RecordingAnswer.Taken taken:
                var window = model.Limits.Pressure is { } limits ? (limits.Min.Pascals, limits.Max.Pascals) : ((double, double)?)null;
                var answer = StrokeIdentifier.Read(taken.Recording, tool, said.Response?.TotalSeconds, window);
                if (kept.Count >= MostKept)
                    kept.Clear();
                return kept[(sha, model, said)] = new(taken.Recording, StrokeParting.Of(taken.Recording), answer, [.. taken.Notes.Select(n => n.Words)]);
            default:
                throw new InvalidOperationException("A text holds a recording, a question or mistakes.");
        }
    }

    private static RecordingOptions? Options(SaidOfRecording said, FormMistakes mistakes)
    {
        var options = new RecordingOptions { PressureColumn = said.Column };
        if (said.Scale is not { } scale)
            return options;
        if (UnitTable.Find(scale) is { Dimension: Dimension.Pressure } unit)
            return options with { PressureUnit = unit };
        switch (SensorScale.Read(scale, Dimension.Pressure))
        {
            case TextReading<SensorScale>.Good good:
                return options with { PressureScale = good.Value };
            case TextReading<SensorScale>.Bad { Fault: var fault }:
                mistakes.Add("scale", Sentence.Of(fault.What), Sentence.Of(fault.Mend));
                return null;
            default:
                throw new InvalidOperationException("A text reads well or badly.");
        }
    }
}
