using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Signs;

/// <summary>
/// Warning signs, 48 units square: a yellow triangle with a black border (ISO 3864-1), with the pictures of ISO 7010 W001 (general),
/// W012 (electricity) and W017 (hot surface), and the blue disc M001 for a notice, redrawn by us in simple strokes. A hazard without a picture of its own gets W001.
/// </summary>
public static class CautionSign
{
    public static Picture Of(Caution caution)
    {
        ArgumentNullException.ThrowIfNull(caution);
        return caution.Level == CautionLevel.Notice ? Mandatory() : For(caution.Hazard);
    }

    /// <summary>The sign for a hazard word of the service model.</summary>
    public static Picture For(string hazard)
    {
        ArgumentNullException.ThrowIfNull(hazard);
        var sketch = new Sketch();
        sketch.Closed(Ink.SignYellow, new Spot(24, 5), new Spot(45, 42), new Spot(3, 42));
        switch (Hazards.SignOf(hazard))
        {
            case HazardSign.Electricity:
                Lightning(sketch);
                break;
            case HazardSign.HotSurface:
                HotSurface(sketch);
                break;
            default:
                Exclamation(sketch);
                break;
        }

        return sketch.Finish(48, 48, "Warning sign: " + hazard.Replace('-', ' '));
    }

    /// <summary>General mandatory action (ISO 7010 M001): for a notice, which is about the work and not about harm.</summary>
    public static Picture Mandatory()
    {
        var sketch = new Sketch();
        sketch.Circle(Ink.SignBlue, 24, 24, 20);
        sketch.Closed(Ink.SignWhite, new Spot(20.8, 11), new Spot(27.2, 11), new Spot(25.9, 28), new Spot(22.1, 28));
        sketch.Circle(Ink.SignWhite, 24, 34, 3.1);
        return sketch.Finish(48, 48, "Sign: do this");
    }

    /// <summary>The signal word (ISO 3864-2, ANSI Z535.4).</summary>
    public static string SignalWord(CautionLevel level) => level switch
    {
        CautionLevel.Danger => "Danger",
        CautionLevel.Warning => "Warning",
        CautionLevel.Caution => "Caution",
        _ => "Notice",
    };

    private static void Exclamation(Sketch sketch)
    {
        sketch.Closed(Ink.SignBlack, new Spot(21.4, 17), new Spot(26.6, 17), new Spot(25.6, 31), new Spot(22.4, 31));
        sketch.Circle(Ink.SignBlack, 24, 35.4, 2.5);
    }

    private static void Lightning(Sketch sketch) => sketch.Closed(
        Ink.SignBlack, new Spot(25.5, 13.5), new Spot(19.2, 27), new Spot(24.2, 27), new Spot(21.6, 38.6), new Spot(30, 23.4), new Spot(25, 23.4), new Spot(28, 13.5));

    private static void HotSurface(Sketch sketch)
    {
        sketch.Line(Ink.SignBlackLine, 14, 37, 34, 37);
        foreach (var x in (ImmutableArray<double>)[18, 24, 30])
            sketch.Add(new Shape.Path(Ink.SignBlackLine, [new Stretch.MoveTo(new(x, 32)), new Stretch.CurveTo(new(x - 4, 27), new(x + 4, 25), new(x, 20))]));
    }
}
