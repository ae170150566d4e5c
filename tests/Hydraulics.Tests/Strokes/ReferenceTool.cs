using System.Globalization;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels;

namespace Ramwright.Hydraulics.Tests.Strokes;

/// <summary>The bundled Corrie 85, and what was recorded of it.</summary>
internal static class ReferenceTool
{
    public static StrokeParameters Healthy { get; } = Read();

    /// <summary>Rows of a recording: s, bar, A.</summary>
    public static List<(double Seconds, double Bar, double Amperes)> Recording(string name) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Recordings", name + ".csv")).Skip(1).Select(line =>
        {
            var cells = line.Split(',');
            return (Number(cells[0]), Number(cells[1]), Number(cells[2]));
        })];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static StrokeParameters Read()
    {
        var reading = new ModelShelf(Path.Combine(AppContext.BaseDirectory, "models")).Read("corrie-85");
        var model = Assert.IsType<ModelReading.Read>(reading).Model;
        return Assert.IsType<StrokeParametersReading.Ready>(StrokeParametersReading.Of(model)).Tool;
    }
}
