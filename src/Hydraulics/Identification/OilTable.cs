using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>The powers in the laws of oil and air, worked out once per tool on a grid of 1 bar and read by straight lines between: 1e-4 of the value at 5 bar, less above.</summary>
internal sealed class OilTable
{
    private const int Bars = 1600;
    private const double StepPascals = 1e5;

    private readonly double[] _gas = new double[Bars + 2];
    private readonly double[] _squeeze = new double[Bars + 2];
    private readonly OilWithAir _oil;

    public OilTable(OilWithAir oil)
    {
        _oil = oil with { AirShare = 0 };
        for (var i = 0; i < _gas.Length; i++)
        {
            _gas[i] = Math.Pow(OilWithAir.AtmospherePascals / (i * StepPascals + OilWithAir.AtmospherePascals), 1 / oil.Exponent);
            _squeeze[i] = _oil.Squeeze(i * StepPascals).Share;
        }
    }

    /// <summary>By which share air-free oil shrinks from zero gauge pressure to this one.</summary>
    public double Squeeze(double pascals) => Between(_squeeze, pascals);

    /// <summary>Tangent bulk modulus with this share of air, as <see cref="OilWithAir.ModulusPascals"/>.</summary>
    public double ModulusPascals(double pascals, double air)
    {
        var gas = air * Between(_gas, pascals);
        var share = gas / (1 - air + gas);
        var gauge = Math.Max(pascals, 0);
        return 1 / ((1 - share) / (_oil.ModulusAtZeroPascals + _oil.ModulusSlope * gauge) + share / (_oil.Exponent * (gauge + OilWithAir.AtmospherePascals)));
    }

    private static double Between(double[] table, double pascals)
    {
        var at = Math.Clamp(pascals / StepPascals, 0, Bars);
        var below = (int)at;
        return table[below] + (at - below) * (table[below + 1] - table[below]);
    }
}
