namespace Ramwright.Instruments.Devices;

/// <summary>Chance that depends on nothing but a seed, a run and a purpose: run 7 draws the same whatever was drawn before.</summary>
internal static class SeededNoise
{
    /// <summary>Uniform above 0 and below 1.</summary>
    public static double Uniform(int seed, int run, int purpose)
    {
        var mixed = Mix(Mix(Mix((uint)seed) ^ (uint)run) ^ (uint)purpose);
        return ((mixed >> 11) + 0.5) * (1.0 / (1UL << 53));
    }

    /// <summary>Standard normal, from two uniforms (Box and Muller, Annals of Mathematical Statistics 29 (1958) 610-611).</summary>
    public static double Normal(int seed, int run, int purpose) =>
        Math.Sqrt(-2 * Math.Log(Uniform(seed, run, 2 * purpose))) * Math.Cos(2 * Math.PI * Uniform(seed, run, (2 * purpose) + 1));

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014), constants from memory.</summary>
    private static ulong Mix(ulong x)
    {
        x += 0x9E3779B97F4A7C15;
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
        return x ^ (x >> 31);
    }
}
