namespace Ramwright.Hydraulics.Identification;

/// <summary>What is believed of an unknown before the recording is read: a normal law within limits.</summary>
/// <param name="Mean">Middle.</param>
/// <param name="Deviation">Standard deviation.</param>
/// <param name="Least">Lower limit.</param>
/// <param name="Most">Upper limit.</param>
/// <param name="Step">Change over which slopes are taken.</param>
internal readonly record struct Prior(double Mean, double Deviation, double Least, double Most, double Step)
{
    /// <summary>Known for this hypothesis: not sought.</summary>
    public bool Fixed => Most == Least;

    public static Prior At(double value) => new(value, 1, value, value, 1);
}

/// <summary>The priors of one hypothesis. Sound leaks may be some times tighter or looser than the service data; a leak that is let grow is anything from there on.</summary>
internal static class Priors
{
    /// <summary>A leak that is a fault, in m³/s per pascal: around 1e-14, a factor of seven either way (one deviation).</summary>
    private static readonly double FaultMean = Math.Log(1e-14);

    /// <summary>The ram moves only while the pump delivers, so the dies close in a delivery stroke and the pressure rises at once: the foot is seen within some milliseconds.</summary>
    private const double ClosingOffSeconds = 0.004;

    /// <summary>A weeping relief lets through at least this share of the pump's delivery just before it opens.</summary>
    private const double LeastWeep = 0.04;

    private const double FaultDeviation = 2.0, SoundDeviation = 0.7;

    public static Prior[] Of(StrokeEvidence evidence, LeakSet leaks)
    {
        var tool = evidence.Tool;
        var current = evidence.Signal.Amperes is not null;
        var priors = new List<Prior>
        {
            new(tool.Filling, 0.3, 0.03, 1.4, 1e-4),
            Leak(leaks.Delivery, tool.DeliveryLeak),
            Leak(leaks.Chamber, tool.InletLeak + tool.PistonLeak),
            Leak(leaks.Bypass, tool.BypassLeak),
            leaks.Any ? new(1, 0.2, 0.45, 1.2, 1e-3) : Prior.At(1),
            leaks.Weep ? new(Math.Log(0.15), 0.7, Math.Log(LeastWeep), Math.Log(3), 1e-3) : Prior.At(-200),
            leaks.Weep ? new(0.75, 0.12, 0.35, 0.97, 1e-3) : Prior.At(0.75),
            new(tool.Oil.AirShare, 0.03, 0, 0.3, 1e-4),
            new(0, 0.012, -0.7, 0.7, 1e-4),
            new(Math.Log(Math.Max(tool.SealFrictionShare, 1e-3)) + 0.15, 0.5, Math.Log(0.3 * Math.Max(tool.SealFrictionShare, 1e-3)), Math.Log(0.3), 1e-2),
            new(tool.SupplyVolts, (current ? 0.06 : 0.025) * tool.SupplyVolts, 0.3 * tool.SupplyVolts, 1.6 * tool.SupplyVolts, 1e-4 * tool.SupplyVolts),
            new(Math.Log(tool.ResistanceOhms), current && (evidence.TurnsAreSeen || evidence.Drive.RunUpOhms is not null) ? 0.8 : 0.25, Math.Log(0.1 * tool.ResistanceOhms), Math.Log(15 * tool.ResistanceOhms), 1e-3),
            new(0.3, 0.5, 0, 1, 1e-3),
        };
        foreach (var build in evidence.Builds)
        {
            priors.Add(new(0, 100, -1000, 1000, 1e-3));
            priors.Add(build.Rise.FromFoot
                ? new(evidence.FootSeconds, Math.Max(ClosingOffSeconds, evidence.Signal.Step), evidence.FootSeconds - 0.03, evidence.FootSeconds + 0.03, 2e-5)
                : new(build.AtFirstPascals / 1e5, 10, -10, 3000, 1e-2));
        }

        foreach (var pause in evidence.Pauses)
        {
            var bar = pause.Pascals[0] / 1e5;
            priors.Add(new(bar, 10, 0, 3000, 1e-2));
            priors.Add(new(0.008 * bar, 0.006 * bar, 0, 0.05 * bar, 1e-2));
            priors.Add(new(Math.Log(1.5), 0.5, Math.Log(0.2), Math.Log(12), 1e-3));
        }

        return [.. priors];
    }

    private static Prior Leak(bool grows, double sound)
    {
        var middle = Math.Log(Math.Max(sound, 1e-18));
        return grows ? new(FaultMean, FaultDeviation, middle, Math.Log(1e-11), 1e-3) : new(middle, SoundDeviation, middle - 4, middle + 4, 1e-2);
    }
}
