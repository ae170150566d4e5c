namespace Ramwright.Instruments.Runs;

/// <summary>A reading and when it was made.</summary>
/// <param name="Seconds">Since any fixed moment, rising from sample to sample.</param>
/// <param name="Bar">Gauge pressure, finite.</param>
public readonly record struct PressureSample(double Seconds, double Bar);
