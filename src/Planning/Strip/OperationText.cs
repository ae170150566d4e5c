using System.Globalization;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>What is done, as a sentence: the model's own words, or those that go with what holds the part.</summary>
internal static class OperationText
{
    public static string Off(Part part, WayOff way)
    {
        if (way.Operation is { Length: > 0 } own)
            return Capital(own);
        var name = Name(part);
        return way.HeldBy?.Kind switch
        {
            HoldKind.Thread when way.HeldBy.Hand is ThreadHand.Left => $"Unscrew the {name}: left-hand thread, turn clockwise",
            HoldKind.Thread => $"Unscrew the {name}",
            HoldKind.LockScrew => $"Slacken the lock screw and draw the {name}",
            HoldKind.Clamp => $"Release the clamp and lift off the {name}",
            HoldKind.PressFit => $"Press out the {name}",
            HoldKind.Pin => $"Drive out the pin and draw the {name}",
            HoldKind.Snap or HoldKind.Adhesive => $"Prise out the {name}",
            _ when part.Size is not null => $"Prise out the {name}",
            _ when part.Place?.Outline is Outline.Spring or Outline.Ball or Outline.Ring or Outline.Turned => $"Draw the {name}",
            _ => $"Lift off the {name}",
        };
    }

    public static string On(Part part, Holding? heldBy, bool isNew)
    {
        if (part.Fit?.Operation is { Length: > 0 } own)
            return Capital(own);
        var name = isNew ? $"new {Name(part)}" : Name(part);
        return heldBy?.Kind switch
        {
            HoldKind.Thread when heldBy.Hand is ThreadHand.Left => $"Fit and tighten the {name}: left-hand thread, turn anticlockwise",
            HoldKind.Thread => $"Fit and tighten the {name}",
            HoldKind.LockScrew => $"Fit the {name} and tighten the lock screw",
            HoldKind.Clamp => $"Fit the {name} and close the clamp",
            HoldKind.PressFit => $"Press in the {name}",
            HoldKind.Pin => $"Fit the {name} and drive in the pin",
            HoldKind.Snap => $"Snap in the {name}",
            _ => $"Fit the {name}",
        };
    }

    public static string Capital(string text) =>
        text.Length == 0 ? text : string.Concat(char.ToUpperInvariant(text[0]).ToString(CultureInfo.InvariantCulture), text.AsSpan(1));

    public static string Name(Part part) => part.Count switch
    {
        1 => part.Name,
        2 => $"{part.Name} (both)",
        _ => string.Create(CultureInfo.InvariantCulture, $"{part.Name} (all {part.Count})"),
    };
}
