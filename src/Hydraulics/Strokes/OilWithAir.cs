namespace Ramwright.Hydraulics.Strokes;

/// <summary>Oil with free air in it, as stiff as it is at a pressure. Gauge pressures in pascals; the gas law takes them absolute.</summary>
/// <param name="ModulusAtZeroPascals">Adiabatic tangent bulk modulus K₀ of air-free oil at zero gauge pressure, above 0.</param>
/// <param name="ModulusSlope">Its growth with pressure, dK/dp, 0 or more.</param>
/// <param name="AirShare">Free air at atmospheric pressure as a share of the volume α₀, 0 to below 1.</param>
/// <param name="Exponent">Polytropic exponent n of the air: about 1.4 in a quick build-up, nearer 1 in a pause.</param>
/// <remarks>α = α₀(p₀/p)^(1/n) / ((1−α₀) + α₀(p₀/p)^(1/n)), 1/K = (1−α)/(K₀ + K′p) + α/(n·p), p absolute in the gas terms. Derived from the two
/// volumes that add up; the form is that of N. D. Manring, Hydraulic Control Systems (Wiley 2005), ch. 2 (chapter from memory).</remarks>
public readonly record struct OilWithAir(double ModulusAtZeroPascals, double ModulusSlope, double AirShare, double Exponent)
{
    /// <summary>Standard atmosphere in pascals, ISO 2533.</summary>
    public const double AtmospherePascals = 101_325;

    /// <summary>Below this absolute pressure (pascals) the gas is taken as at this pressure: the oil boils there and no model of bubbles holds.</summary>
    private const double LeastAbsolutePascals = 20_000;

    /// <summary>Effective tangent bulk modulus in pascals at a gauge pressure in pascals.</summary>
    public double ModulusPascals(double gaugePascals) => Modulus(gaugePascals).Pascals;

    /// <summary>The modulus in pascals, and how it changes with pressure (dK/dp).</summary>
    internal (double Pascals, double Slope) Modulus(double gaugePascals)
    {
        var absolute = Math.Max(gaugePascals + AtmospherePascals, LeastAbsolutePascals);
        var moves = gaugePascals + AtmospherePascals > LeastAbsolutePascals ? 1 : 0;
        var oil = ModulusAtZeroPascals + ModulusSlope * Math.Max(gaugePascals, 0);
        var oilSlope = gaugePascals > 0 ? ModulusSlope : 0;
        if (AirShare <= 0)
            return (oil, oilSlope);
        var gas = AirShare * Math.Pow(AtmospherePascals / absolute, 1 / Exponent);
        var whole = 1 - AirShare + gas;
        var share = gas / whole;
        var shareSlope = -moves * gas / (Exponent * absolute) * (1 - AirShare) / (whole * whole);
        var softness = (1 - share) / oil + share / (Exponent * absolute);
        var softnessSlope = -shareSlope / oil - (1 - share) * oilSlope / (oil * oil) + shareSlope / (Exponent * absolute) - moves * share / (Exponent * absolute * absolute);
        return (1 / softness, -softnessSlope / (softness * softness));
    }

    /// <summary>By which share a volume shrinks from zero gauge pressure to this one in pascals (0 or more), and its slope by pascal.</summary>
    /// <remarks>Oil by K = K₀ + K′p integrated, V/V₀ = (1 + K′p/K₀)^(−1/K′) (F. D. Murnaghan, 1944); air by the polytropic law.</remarks>
    internal (double Share, double PerPascal) Squeeze(double gaugePascals)
    {
        if (gaugePascals <= 0)
            return (0, 0);
        var ratio = 1 + ModulusSlope * gaugePascals / ModulusAtZeroPascals;
        var oil = ModulusSlope > 0 ? Math.Pow(ratio, -1 / ModulusSlope) : Math.Exp(-gaugePascals / ModulusAtZeroPascals);
        var absolute = gaugePascals + AtmospherePascals;
        var air = Math.Pow(AtmospherePascals / absolute, 1 / Exponent);
        return ((1 - AirShare) * (1 - oil) + AirShare * (1 - air),
            (1 - AirShare) * oil / (ModulusAtZeroPascals * ratio) + AirShare * air / (Exponent * absolute));
    }
}
