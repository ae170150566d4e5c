using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove;

/// <summary>All that is fixed before the first run, as it was typed.</summary>
public sealed class OpenSeriesForm
{
    internal const string UsualLoad = "dies closed on nothing";

    internal static Temperature UsualRoom { get; } = Temperature.FromCelsius(20);

    /// <summary>Inventory number, or <see cref="MemoryFit.Value"/>.</summary>
    public string? Device { get; set; }

    public string? Load { get; set; }
    public string? Room { get; set; }
    public string? Oil { get; set; }
    public string? Rise { get; set; }
    public string? More { get; set; }
    public string? Scatter { get; set; }

    /// <summary>What was wished, or null with every mistake noted.</summary>
    public SeriesWish? Read(Words words, FormMistakes mistakes)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(mistakes);
        InstrumentId? device = null;
        if (Device != MemoryFit.Value)
        {
            if (InstrumentId.TryParse(Device, out var id))
                device = id;
            else
                mistakes.Add("device", "No reference was chosen.", "Choose the one that reads the peaks.");
        }

        var (room, oil) = (Warmth("room", Room, 243, 333, words, mistakes), Warmth("oil", Oil, 243, 393, words, mistakes));
        var (rise, more) = (ReadRise(words, mistakes), ReadMore(mistakes));
        return mistakes.Count > 0 ? null : new SeriesWish(device, string.IsNullOrWhiteSpace(Load) ? UsualLoad : Load.Trim(), room, oil, more, Scatter == "moderated", rise);
    }

    private static Temperature? Warmth(string field, string? text, double least, double most, Words words, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(text) || Figures.Read(text, words.TemperatureUnit, field, mistakes) is not { } read)
            return null;
        if (read.Kind == MeasuredKind.Temperature && read.Si > least && read.Si < most)
            return Temperature.FromSi(read.Si);
        mistakes.Add(field, "That is no temperature of a workshop.", $"Write it in {words.TemperatureUnit}, such as {words.Show(UsualRoom)}.");
        return null;
    }

    private double? ReadRise(Words words, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(Rise) || Figures.Read(Rise, words.PressureUnit, "rise", mistakes) is not { } read)
            return null;
        if (read.AsPressure is { Bar: > 0 and <= ToolRise.MostBarPerSecond and var bar })
            return bar;
        mistakes.Add("rise", "That is no rise of such a tool.", $"Write how much the pressure rises in a second just before its peak, in {words.PressureUnit}, or leave it empty.");
        return null;
    }

    private int? ReadMore(FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(More))
            return null;
        if (int.TryParse(More.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var runs) && runs is >= 1 and <= 1000)
            return runs;
        mistakes.Add("more", $"'{More.Trim()}' is no number of runs.", "Write a whole number from 1 to 1,000, or leave it empty.");
        return null;
    }
}
