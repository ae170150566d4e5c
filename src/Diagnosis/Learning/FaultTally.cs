namespace Ramwright.Diagnosis.Learning;

/// <summary>Jobs of one model in which a fault could have been, and in how many it was.</summary>
/// <param name="Exposure">Number of closed jobs.</param>
/// <param name="Found">Number of them in which it was examined and found.</param>
/// <param name="Expected">Expected number among those in which nobody looked, by the probability of each; zero or more.</param>
public readonly record struct FaultTally(int Exposure, int Found, double Expected)
{
    /// <summary>Found and expected together, a number of jobs.</summary>
    internal double Count => Found + Expected;
}
