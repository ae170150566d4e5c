using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Web.Parts;
using Ramwright.Instruments;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Prove;

/// <summary>A full run as given to the bench.</summary>
/// <param name="Peak">As the device shows it; a force was turned into the pressure that it stands for.</param>
/// <param name="VoidCause">What happened apart from the value, where the run is void; null where it counts.</param>
public sealed record GivenRun(Pressure Peak, string? VoidCause = null, RunSource Source = RunSource.Written);

/// <summary>The runs of an uploaded file in their order, void ones among them, or every mistake.</summary>
public static class UploadedRuns
{
    private const int MostShown = 20;

    /// <returns>No runs when <paramref name="mistakes"/> holds any.</returns>
    /// <param name="opened">The series that they belong to: a force cell's readings become pressures as it was fixed there.</param>
    public static ImmutableArray<GivenRun> Read(string fileName, ReadOnlySpan<byte> bytes, SeriesOpened? opened, ServiceModel model, FormMistakes mistakes)
    {
        var force = RamForce.Of(model);
        var options = new ReadingsOptions
        {
            RamArea = opened?.Reference?.Correction?.RamArea ?? force?.Area,
            ForceHeldBack = opened?.Reference?.Correction?.HeldBack ?? force?.HeldBack ?? default,
        };
        var answer = Readings.Read(fileName, bytes, options);
        if (answer is ReadingsAnswer.Refused refused)
            Refuse(refused, mistakes);
        if (answer is not ReadingsAnswer.Taken taken)
            return [];
        foreach (var run in taken.Void.Where(v => v.Peak is null))
            mistakes.Add("file", string.Create(CultureInfo.InvariantCulture, $"Line {run.Line}: run {run.Run} is void and has no peak, so there is nothing to record."), "Write what the device showed beside the cause; if it showed nothing, take the line out.");
        if (mistakes.Count > 0)
            return [];
        var runs = taken.Readings.Select(r => (r.Line, Run: new GivenRun(r.Peak, null, RunSource.File)))
            .Concat(taken.Void.Select(v => (v.Line, Run: new GivenRun(v.Peak!.Value, v.Cause, RunSource.File))));
        return [.. runs.OrderBy(r => r.Line).Select(r => r.Run)];
    }

    private static void Refuse(ReadingsAnswer.Refused refused, FormMistakes mistakes)
    {
        foreach (var mistake in refused.Mistakes.Take(MostShown))
            mistakes.Add("file", mistake.At.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $"Line {mistake.At.Line}: {mistake.What}") : mistake.What, mistake.Mend);
        if (refused.Mistakes.Length > MostShown)
            mistakes.Add("file", string.Create(CultureInfo.InvariantCulture, $"{refused.Mistakes.Length - MostShown} more mistakes stand in this file."), "Mend those shown and choose the file again.");
    }
}
