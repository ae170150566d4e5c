using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Papers;
using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Paper.Charts;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>A simulated stroke in words, as JSON and as what its picture needs.</summary>
internal static class StrokeAnswer
{
    public static Answer Of(ServiceModel model, Stroke stroke, ImmutableArray<string> assumed)
    {
        var exit = stroke.End switch { StrokeEnd.Home or StrokeEnd.RamStaysOut => Exit.Yes, StrokeEnd.GivenUp => Exit.No, _ => Exit.Undecided };
        return new Answer(exit, Text(model, stroke, assumed), new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["end"] = Kebab.Of(stroke.End),
            ["advanceSeconds"] = Rounded(stroke.AdvanceSeconds, 4),
            ["returnSeconds"] = Rounded(stroke.ReturnSeconds, 4),
            ["openedBar"] = Rounded(stroke.First(StrokeEventKind.ReliefOpened)?.Pascals / 1e5, 2),
            ["peakBar"] = Rounded(stroke.PeakPascals / 1e5, 2),
            ["readingPeakBar"] = Rounded(stroke.ReadingPeakPascals / 1e5, 2),
            ["drawnMillilitres"] = Rounded(stroke.MostDrawnCubicMetres * 1e6, 3),
            ["rows"] = stroke.Samples.Length,
            ["steps"] = stroke.Steps,
            ["events"] = new JsonArray([.. stroke.Events.Select(e => new JsonObject
            {
                ["event"] = Kebab.Of(e.Kind),
                ["seconds"] = Rounded(e.Seconds, 6),
                ["bar"] = Rounded(e.Pascals / 1e5, 2),
                ["barPerSecond"] = Rounded(e.PascalsPerSecond / 1e5, 1),
                ["amperes"] = Rounded(e.Amperes, 2),
                ["millimetres"] = Rounded(e.Metres * 1e3, 3),
            })]),
            ["assumed"] = new JsonArray([.. assumed.Select(a => JsonValue.Create(a))]),
        });
    }

    /// <summary>What the picture shows: the simulated recording, with the phases that are found in it and the events of the simulation.</summary>
    public static StrokeChartInput Chart(ServiceModel model, Stroke stroke)
    {
        var recording = new Recording([.. stroke.Samples.Select(s => s.Seconds)], [.. stroke.Samples.Select(s => s.ReadingPascals)], [.. stroke.Samples.Select(s => s.Amperes)]);
        var segments = StrokeParting.Of(recording) switch { Segmentation.WholeStroke whole => whole.Segments, Segmentation.HalfStroke half => half.Segments, _ => null };
        return RecordingPicture.Of(model.Tool.Name, recording, segments, model.Limits.Pressure) with
        {
            Moments = [.. stroke.Events.Where(IsShown).Take(12).Select(e => (e.Seconds, Words(e.Kind)))],
        };
    }

    private static string Text(ServiceModel model, Stroke stroke, ImmutableArray<string> assumed)
    {
        var text = new StringBuilder();
        text.Append(stroke.End switch
        {
            StrokeEnd.Home => "the relief opened and the ram came home",
            StrokeEnd.RamStaysOut => "the relief opened, but the ram stayed out",
            StrokeEnd.GivenUp => "the relief did not open before the operator gave up",
            _ => "not carried to its end: these figures belong to no tool",
        }).Append(CultureInfo.InvariantCulture, $" ({model.Tool.Name}, simulated)\n");
        if (stroke.AdvanceSeconds is { } advance)
            text.Append(CultureInfo.InvariantCulture, $"  dies closed after {advance:0.00} s\n");
        if (stroke.First(StrokeEventKind.ReliefOpened) is { } opened)
            text.Append(CultureInfo.InvariantCulture, $"  relief opened at {opened.Pascals / 1e5:0.0} bar, rising at {opened.PascalsPerSecond / 1e5:#,0} bar/s, {opened.Amperes:0.0} A\n");
        text.Append(CultureInfo.InvariantCulture, $"  highest pressure {stroke.PeakPascals / 1e5:0.0} bar, {stroke.ReadingPeakPascals / 1e5:0.0} bar as the sensor shows it\n");
        if (stroke.ReturnSeconds is { } back)
            text.Append(CultureInfo.InvariantCulture, $"  ram home {back:0.00} s after that\n");
        text.Append('\n');
        foreach (var e in stroke.Events)
            text.Append(CultureInfo.InvariantCulture, $"  {e.Seconds,7:0.000} s  {e.Pascals / 1e5,6:0.0} bar  {e.Amperes,5:0.0} A  {Math.Max(e.Metres, 0) * 1e3,5:0.0} mm  {Words(e.Kind)}\n");
        foreach (var phrase in assumed)
            text.Append("  assumed: ").Append(phrase).Append('\n');
        text.Append("  averaged over a turn of the pump: a recorded peak lies a few bar higher, its current swings");
        return text.ToString();
    }

    private static bool IsShown(StrokeEvent e) => e.Kind is not (StrokeEventKind.RamMoves or StrokeEventKind.DiesParted);

    private static string Words(StrokeEventKind kind) => Kebab.Of(kind).Replace('-', ' ');

    private static double? Rounded(double? value, int places) => value is { } v && double.IsFinite(v) ? Math.Round(v, places) + 0.0 : null;
}
