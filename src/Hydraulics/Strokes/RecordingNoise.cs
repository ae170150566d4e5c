namespace Ramwright.Hydraulics.Strokes;

/// <summary>Makes a simulated recording look like one that was taken: noise and steps of sensor and logger, from a seed.</summary>
/// <remarks>Normal noise of 1.2 bar and 0.25 A, steps of 0.25 bar and 0.1 A, as in the invented test recordings. Box &amp; Muller, Ann. Math. Statist. 29 (1958).</remarks>
public sealed class RecordingNoise(int seed)
{
    private const double NoisePascals = 1.2e5, StepPascals = 0.25e5, NoiseAmperes = 0.25, StepAmperes = 0.1;

    private readonly Random _random = new(seed);

    public StrokeSample Of(StrokeSample sample)
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        var angle = 2 * Math.PI * _random.NextDouble();
        return sample with
        {
            ReadingPascals = StepPascals * Math.Round((sample.ReadingPascals + NoisePascals * radius * Math.Cos(angle)) / StepPascals),
            Amperes = StepAmperes * Math.Round((sample.Amperes + NoiseAmperes * radius * Math.Sin(angle)) / StepAmperes),
        };
    }
}
