using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>One normal part of the prior gain.</summary>
/// <param name="BarPerTurn">Mean, bar per turn clockwise.</param>
/// <param name="Spread">Standard deviation, bar per turn.</param>
/// <param name="Share">Weight, 0 to 1; the parts add up to one.</param>
internal readonly record struct GainPart(double BarPerTurn, double Spread, double Share);

/// <summary>What is known of the screw's gain before the first run, as a mixture of normal distributions.</summary>
/// <param name="BarPerTurn">The computed gain, bar per turn clockwise; negative where clockwise lowers.</param>
/// <param name="FromModel">Whether the model's relief data stand behind it.</param>
/// <remarks>
/// The relief opens when pressure × effective area = spring force, so one turn adds rate × pitch / (contact area − stem area).
/// The area's relative uncertainty is 2·d²/(d² − d_s²) times that of the contact diameter d; with the spring's rate they add as root sum of squares.
/// A quarter of the prior is kept for a valve that is not as the model says (another spring, a worn seat); without data the gain is
/// log-normal about a tenth of the nominal pressure per turn, within a factor of four or so, laid out in nine parts.
/// </remarks>
internal sealed record ReliefPrior(double BarPerTurn, bool FromModel, ImmutableArray<GainPart> Parts)
{
    private const double UsualDiameterSpread = 0.05; // from memory: a seat worn in by some hundredths of a millimetre
    private const double RateSpread = 0.05; // from memory: coil springs of usual grade keep their rate within about ± 10 %
    private const double OtherShare = 0.25, OtherSpread = 0.25; // a valve not as the model says
    private const double GainPerNominal = 0.10; // one turn of a small high-pressure relief moves a tenth of its setting, within a factor of four
    private const double WideSpread = 0.75; // in ln(gain)

    /// <summary>Relative standard deviation of the computed gain; without relief data that of ln(gain).</summary>
    public double RelativeSpread { get; private init; } = WideSpread;

    public int RaisingSign => BarPerTurn > 0 ? 1 : -1;

    public static ReliefPrior Of(Limits limits, ReliefData? relief)
    {
        double contact = Math.Pow(relief?.ContactDiameter.Metres ?? 0, 2), stem = Math.Pow(relief?.StemDiameter?.Metres ?? 0, 2);
        if (relief is null || !(contact > stem) || !(relief.SpringRate.Si > 0) || !(relief.Pitch.Si > 0))
            return Wide(GainPerNominal * limits.Nominal.Bar); // level 0; that clockwise raises is common practice
        var area = Math.PI / 4 * (contact - stem);
        var gain = relief.SpringRate.NewtonsPerMetre * relief.Pitch.Metres / area / 1e5;
        var ofArea = 2 * contact / (contact - stem) * (relief.ContactDiameterSpread ?? UsualDiameterSpread);
        var spread = Math.Sqrt(ofArea * ofArea + RateSpread * RateSpread);
        var signed = relief.ClockwiseRaises ? gain : -gain;
        return new(signed, FromModel: true, [new(signed, spread * gain, 1 - OtherShare), new(signed, Math.Max(OtherSpread, spread) * gain, OtherShare)]) { RelativeSpread = spread };
    }

    private static ReliefPrior Wide(double gain)
    {
        const int Side = 4;
        const double Step = 0.42, Own = 0.21; // in ln(gain): the parts' own width fills the steps
        var between = WideSpread * WideSpread - Own * Own;
        double[] shares = [.. Enumerable.Range(-Side, 2 * Side + 1).Select(k => Math.Exp(-0.5 * k * Step * k * Step / between))];
        var parts = ImmutableArray.CreateBuilder<GainPart>();
        for (var k = -Side; k <= Side; k++)
            parts.Add(new(gain * Math.Exp(k * Step), Own * gain * Math.Exp(k * Step), shares[k + Side] / shares.Sum()));
        return new(gain, FromModel: false, parts.ToImmutable());
    }
}
