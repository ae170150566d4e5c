using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>What is known of the screw's gain before the first run: bar per turn clockwise, as a normal distribution.</summary>
/// <param name="BarPerTurn">Mean; negative where clockwise lowers.</param>
/// <param name="Spread">Standard deviation, bar per turn.</param>
/// <param name="FromModel">Whether the model's relief data stand behind it.</param>
/// <remarks>
/// The relief opens when pressure × effective area = spring force, so one turn adds rate × pitch / (contact area − stem area).
/// The area's relative uncertainty is 2·d²/(d² − d_s²) times that of the contact diameter d; with the spring's rate they add as root sum of squares.
/// </remarks>
internal readonly record struct ReliefPrior(double BarPerTurn, double Spread, bool FromModel)
{
    private const double UsualDiameterSpread = 0.05; // from memory: a seat worn in by some hundredths of a millimetre
    private const double RateSpread = 0.05; // from memory: coil springs of usual grade keep their rate within about ± 10 %
    private const double GainPerNominal = 0.10; // one turn of a small high-pressure relief moves a tenth of its setting, within a factor of two or so
    private const double WideSpread = 0.5;

    public static ReliefPrior Of(Limits limits, ReliefData? relief)
    {
        if (relief is null) // level 0: that clockwise raises is common practice
            return new(GainPerNominal * limits.Nominal.Bar, WideSpread * GainPerNominal * limits.Nominal.Bar, FromModel: false);
        double contact = Math.Pow(relief.ContactDiameter.Metres, 2), stem = Math.Pow(relief.StemDiameter?.Metres ?? 0, 2);
        if (!(contact > stem))
            return Of(limits, null); // the linter names it; without an area there is no gain to compute
        var area = Math.PI / 4 * (contact - stem);
        var gain = relief.SpringRate.NewtonsPerMetre * relief.Pitch.Metres / area / 1e5;
        var ofArea = 2 * contact / (contact - stem) * (relief.ContactDiameterSpread ?? UsualDiameterSpread);
        return new(relief.ClockwiseRaises ? gain : -gain, gain * Math.Sqrt(ofArea * ofArea + RateSpread * RateSpread), FromModel: true);
    }
}
