namespace Ramwright.Planning;

/// <summary>The time of one piece of work, and its relative standard deviation (zero or more).</summary>
public readonly record struct WorkTime(TimeSpan Expected, double Spread);

/// <summary>How long a row of steps takes: the expected time, and the time that is enough in nine cases of ten.</summary>
/// <remarks>
/// T = S · Σ tᵢ(1 + εᵢ): each step scatters by its own spread σᵢ, independent of the rest, and technician and tool put one factor S (mean 1,
/// standard deviation s) on all of them. With μ = Σ tᵢ and v = Σ tᵢ²σᵢ² that gives E T = μ and, exactly, Var T = (1 + s²)(μ² + v) − μ².
/// Without s the scatter of a long job would average out and the safe figure would be too low. T is taken as lognormal with these two
/// moments: P90 = μ · exp(z·q − q²/2), q² = ln(1 + Var T / μ²), z = 1.28155.
/// </remarks>
public sealed record TimeEstimate(TimeSpan Likely, TimeSpan Safe)
{
    /// <summary>The 90 % point of the standard normal distribution.</summary>
    private const double Z90 = 1.2815515655446004;

    /// <param name="sharedSpread">Relative standard deviation of the factor that all steps share, zero or more.</param>
    public static TimeEstimate Of(IEnumerable<WorkTime> work, double sharedSpread)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(sharedSpread);
        var (mean, own) = (0.0, 0.0);
        foreach (var (expected, spread) in work)
        {
            mean += expected.TotalSeconds;
            own += Math.Pow(expected.TotalSeconds * spread, 2);
        }

        if (mean <= 0)
            return new TimeEstimate(TimeSpan.Zero, TimeSpan.Zero);
        var variance = (1 + sharedSpread * sharedSpread) * (mean * mean + own) - mean * mean;
        var q = Math.Sqrt(Math.Log(1 + variance / (mean * mean)));
        return new TimeEstimate(TimeSpan.FromSeconds(mean), TimeSpan.FromSeconds(mean * Math.Exp(Z90 * q - q * q / 2)));
    }
}
