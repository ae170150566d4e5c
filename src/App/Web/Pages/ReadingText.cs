using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Records.Events;

namespace Ramwright.App.Web.Pages;

/// <summary>A recorded figure with its unit.</summary>
public static class ReadingText
{
    public static string Show(MeasuredValue r, Words words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return r.Kind switch
        {
            MeasuredKind.Pressure => words.Show(Pressure.FromSi(r.Si)),
            MeasuredKind.Force => words.Show(Force.FromSi(r.Si)),
            MeasuredKind.Torque => words.Show(Torque.FromSi(r.Si)),
            MeasuredKind.Length => words.Show(Length.FromSi(r.Si)),
            MeasuredKind.Angle => words.Show(Angle.FromSi(r.Si)),
            MeasuredKind.Volume => words.Show(Volume.FromSi(r.Si)),
            MeasuredKind.Temperature => words.Show(Temperature.FromSi(r.Si)),
            MeasuredKind.Time => TimeText.Show(TimeSpan.FromSeconds(r.Si)),
            MeasuredKind.Current => Plain(r.Si, "A"),
            MeasuredKind.Voltage => Plain(r.Si, "V"),
            _ => Plain(r.Si, "pieces"),
        };
    }

    private static string Plain(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {unit}");
}
