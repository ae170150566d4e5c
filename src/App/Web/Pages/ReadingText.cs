using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Records.Events;

namespace Ramwright.App.Web.Pages;

/// <summary>A recorded figure with its unit.</summary>
public static class ReadingText
{
    public static string Show(Reading r, Words words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return r.Kind switch
        {
            ReadingKind.Pressure => words.Show(Pressure.FromSi(r.Si)),
            ReadingKind.Force => words.Show(Force.FromSi(r.Si)),
            ReadingKind.Torque => words.Show(Torque.FromSi(r.Si)),
            ReadingKind.Length => words.Show(Length.FromSi(r.Si)),
            ReadingKind.Angle => words.Show(Angle.FromSi(r.Si)),
            ReadingKind.Volume => words.Show(Volume.FromSi(r.Si)),
            ReadingKind.Temperature => words.Show(Temperature.FromSi(r.Si)),
            ReadingKind.Time => TimeText.Show(TimeSpan.FromSeconds(r.Si)),
            ReadingKind.Current => Plain(r.Si, "A"),
            ReadingKind.Voltage => Plain(r.Si, "V"),
            _ => Plain(r.Si, "pieces"),
        };
    }

    private static string Plain(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {unit}");
}
