using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>Whether a peak can be what the tool did. A slip of the pen must not turn a screw.</summary>
public abstract record ReadingCheck
{
    private const double FarAbove = 2; // times the maximum: the relief, or the frame, would have gone before (our choice)

    private ReadingCheck() { }

    public sealed record Plausible : ReadingCheck;

    /// <summary>Asked back.</summary>
    /// <param name="What">What is wrong with it, without a full stop.</param>
    /// <param name="Mend">What to do.</param>
    public sealed record Implausible(string What, string Mend) : ReadingCheck;

    public static ReadingCheck Of(Pressure peak, Limits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        if (!(peak.Bar > 0))
            return new Implausible(Say($"a peak of {peak.Bar:0.#} bar is none"), "write the peak that the device shows, above 0 bar");
        if (peak.Bar <= FarAbove * limits.Maximum.Bar)
            return new Plausible();
        var tenth = peak.Bar / 10;
        var meant = tenth >= 0.25 * limits.Nominal.Bar && tenth <= FarAbove * limits.Maximum.Bar ? Say($"if a decimal point is missing, write {tenth:0.#}; ") : "";
        return new Implausible(
            Say($"{peak.Bar:#,0.#} bar is more than twice the maximum of {limits.Maximum.Bar:0.#} bar"),
            meant + "if the device showed it, do not run the tool again: put it aside and have frame and device looked at");
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
