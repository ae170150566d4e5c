using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Measurements;

/// <summary>How the readings of one measurement are spread on this tool family, sound and with each fault that changes them.</summary>
/// <param name="Sound">Of a sound tool.</param>
/// <param name="WithFault">By place of the fault.</param>
internal sealed record MeasurementSpread(ReadingSpread Sound, ImmutableArray<(int Fault, ReadingSpread Spread)> WithFault)
{
    /// <summary>Half the width of the step that a reading stands for, in standard deviations.</summary>
    private const double HalfStep = 0.25;

    /// <summary>
    /// Puts a value into the problem. Faults that move the reading to the side on which it lies explain it, the worst of them ruling (<see cref="OrderedOutcome"/>); a
    /// fault that would have moved it to the other side is weighed by how seldom it would have let it come so far.
    /// </summary>
    public void Put(NoisyOr problem, double value)
    {
        var (scale, half) = (Math.Abs(Sound.Middle) + Sound.Scatter(Sound.Middle), HalfStep * Sound.Scatter(value));
        var above = value >= Sound.Middle;
        bool Explains((int Fault, ReadingSpread Spread) one) => one.Spread.Middle >= Sound.Middle == above;
        foreach (var (fault, spread) in WithFault.Where(f => !Explains(f)))
            problem.Weigh(fault, Math.Min(1, AsFar(spread) / AsFar(Sound)));
        OrderedOutcome.Put(problem, (Nearer(Sound), NotFarther(Sound)), WithFault.Where(Explains).Select(f => (f.Fault, Nearer(f.Spread), NotFarther(f.Spread))));

        // Seen from the sound tool outward: P(nearer than the step), P(not farther than the step); and P(at least as far as the step).
        double Nearer(ReadingSpread s) => above ? s.UpTo(value - half, scale) : 1 - s.UpTo(value + half, scale);
        double NotFarther(ReadingSpread s) => above ? s.UpTo(value + half, scale) : 1 - s.UpTo(value - half, scale);
        double AsFar(ReadingSpread s) => 1 - Nearer(s);
    }

    /// <summary>How often a reading falls below, within and above two standard deviations of a sound tool, with exactly these faults; each side by the faults that move it there.</summary>
    public (double Below, double Within, double Above) Bands(IReadOnlyCollection<int> present)
    {
        var (scale, edge) = (Math.Abs(Sound.Middle) + Sound.Scatter(Sound.Middle), 2 * Sound.Scatter(Sound.Middle));
        var notBelow = 1 - Sound.UpTo(Sound.Middle - edge, scale);
        var notAbove = Sound.UpTo(Sound.Middle + edge, scale);
        foreach (var (_, spread) in WithFault.Where(f => present.Contains(f.Fault)))
        {
            if (spread.Middle < Sound.Middle)
                notBelow *= Math.Min(1, (1 - spread.UpTo(Sound.Middle - edge, scale)) / (1 - Sound.UpTo(Sound.Middle - edge, scale)));
            else
                notAbove *= Math.Min(1, spread.UpTo(Sound.Middle + edge, scale) / Sound.UpTo(Sound.Middle + edge, scale));
        }

        return (1 - notBelow, notBelow * notAbove, notBelow * (1 - notAbove));
    }
}

/// <summary>The spreads of a model's measurements, computed when first asked for and kept.</summary>
internal sealed class ReadingSpreads(ServiceModel model)
{
    private readonly ConcurrentDictionary<string, MeasurementSpread?> kept = new(StringComparer.Ordinal);

    /// <summary>The spread, or null when the model says too little of the tool's behaviour.</summary>
    public MeasurementSpread? Of(QuickMeasurement measurement) => kept.GetOrAdd(measurement.Id, _ => Computed(measurement));

    private MeasurementSpread? Computed(QuickMeasurement measurement)
    {
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready { Tool: var tool })
            return null;
        if (measurement.Id == QuickMeasurement.PackResistance.Id)
            return Pack(tool);
        if (StrokeReadings.Of(measurement, tool) is not { } sound)
            return null;
        var with = ImmutableArray.CreateBuilder<(int, ReadingSpread)>();
        for (var i = 0; i < model.Faults.Length; i++)
        {
            ImmutableArray<double> centres = [.. FaultSeverity.Of(model.Faults[i].Id.Value, tool).Select(t => StrokeReadings.Of(measurement, t)).OfType<double>()];
            if (centres.Length > 0 && measurement.Id == QuickMeasurement.StrokesPerCharge.Id && model.Faults[i].Id.Value == "pack-worn")
                centres = [.. centres.Select((c, s) => c * (0.75 - 0.12 * s))]; // what is left of the charge: invented
            if (centres.Length > 0 && centres.Any(c => Math.Abs(c - sound) > 0.2 * Spread([sound]).Scatter(sound)))
                with.Add((i, Spread(centres)));
        }

        return new(Spread([sound]), with.ToImmutable());

        ReadingSpread Spread(ImmutableArray<double> centres) => new(centres, measurement.Scatter.Share, measurement.Scatter.Fixed);
    }

    /// <summary>The pack's part of the resistance is taken as 55 % of the whole; worn, it is 1.6 to 4 times that. Invented.</summary>
    private MeasurementSpread Pack(StrokeParameters tool)
    {
        var (sound, scatter) = (0.55 * tool.ResistanceOhms, QuickMeasurement.PackResistance.Scatter);
        ImmutableArray<double> worn = [.. new[] { 1.6, 2, 2.6, 3.2, 4 }.Select(f => f * sound)];
        return new(new([sound], scatter.Share, scatter.Fixed),
            [.. model.Faults.Select((f, i) => (f, i)).Where(f => f.f.Id.Value == "pack-worn").Select(f => (f.i, new ReadingSpread(worn, scatter.Share, scatter.Fixed)))]);
    }
}
