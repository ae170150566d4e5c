using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Diagnosis.Measurements;

/// <summary>What a measurement reads on a simulated tool; null where the tool does not get that far.</summary>
internal static class StrokeReadings
{
    /// <summary>Share of the relief pressure at which a hold is begun; the charge of a pack, 2.5 Ah, where no model says it; what the pressure loses by the oil's cooling, which the stroke model leaves out. From judgement.</summary>
    private const double HoldShare = 0.72, PackAmpereSeconds = 2.5 * 3600, Cooling = 0.02;

    /// <summary>In the measurement's SI unit.</summary>
    public static double? Of(QuickMeasurement measurement, StrokeParameters tool) => measurement.Id switch
    {
        "advance-time" => Straight(tool).AdvanceSeconds,
        "opening" => Straight(tool).First(StrokeEventKind.ReliefOpened)?.Pascals,
        "no-load-current" => Straight(tool).First(StrokeEventKind.DiesClosed)?.Amperes,
        "hold" => Fall(tool),
        "strokes-per-charge" => Strokes(tool),
        _ => null,
    };

    private static Stroke Straight(StrokeParameters tool) => StrokeSimulator.Run(tool, new StrokePlan());

    private static double? Fall(StrokeParameters tool)
    {
        var stroke = StrokeSimulator.Run(tool, new StrokePlan { PausePascals = HoldShare * tool.ReliefPascals, PauseSeconds = 61, SamplesPerSecond = 10 });
        if (stroke.First(StrokeEventKind.TriggerReleased) is not { } released)
            return null;
        double At(double seconds) => stroke.Samples.FirstOrDefault(s => s.Seconds >= released.Seconds + seconds).Pascals;
        var fall = At(0.5) > 1e5 ? 1 - At(60) / At(0.5) : 1;
        return fall + Cooling * (1 - fall);
    }

    private static double? Strokes(StrokeParameters tool)
    {
        var connector = new StrokeLoad.Connector(0.55 * tool.ReliefPascals * tool.RamSquareMetres, 0.55 * tool.StrokeMetres, 0.175 * tool.StrokeMetres);
        var samples = StrokeSimulator.Run(tool, new StrokePlan { Load = connector, SamplesPerSecond = 50 }).Samples;
        var charge = 0.0; // trapezoid rule, A·s
        for (var i = 1; i < samples.Length; i++)
            charge += 0.5 * (samples[i].Amperes + samples[i - 1].Amperes) * (samples[i].Seconds - samples[i - 1].Seconds);
        return charge > 0 ? PackAmpereSeconds / charge : null;
    }
}
