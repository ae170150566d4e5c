using Ramwright.Paper.Drawing;
using Ramwright.Proving;
using Ramwright.Proving.Text;

namespace Ramwright.Paper.Signs;

/// <summary>
/// The marks of the three answers, 48 units square: a filled disc with a tick cut out for 'conforms' (nothing else wears that tick),
/// a square with a bar for 'does not conform', a hatched ring for 'undecided'.
/// </summary>
public static class VerdictMark
{
    public static Picture Of(Conformity conformity)
    {
        var sketch = new Sketch();
        switch (conformity)
        {
            case Conformity.Conforms:
                sketch.Circle(Ink.Mark, 24, 24, 22);
                sketch.Open(Ink.MarkCutOut, new Spot(13, 25), new Spot(21, 33), new Spot(36, 16));
                break;
            case Conformity.DoesNotConform:
                sketch.Rectangle(Ink.Mark, 3, 3, 42, 42);
                sketch.Line(Ink.MarkCutOut, 12, 24, 36, 24);
                break;
            default:
                sketch.Circle(Ink.MarkRing, 24, 24, 20.5);
                sketch.Add(Hatching.OfCircle(Ink.Hatch, new(24, 24), 19, 4));
                break;
        }

        return sketch.Finish(48, 48, Words(conformity));
    }

    /// <summary>The answer in words.</summary>
    public static string Words(Conformity conformity) => VerdictText.Word(conformity);
}
