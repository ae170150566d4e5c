using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.House.Models;

/// <summary>Something about a part that a hand used to other tools gets wrong; read off the model, not written for the page.</summary>
public sealed record ModelTrap(string Part, string What)
{
    public static ImmutableArray<ModelTrap> Of(ServiceModel model) => [.. model.Parts.SelectMany(p => Of(model, p).Select(w => new ModelTrap(p.Name, w)))];

    private static IEnumerable<string> Of(ServiceModel model, Part part)
    {
        if (part.WaysOff.Any(w => w.HeldBy is { Hand: ThreadHand.Left }))
            yield return "left-hand thread: it unscrews clockwise";
        if (part.WaysOff.Any(w => w.HeldBy is { AdhesiveLocked: true } or { Kind: HoldKind.Adhesive }))
            yield return "locked with adhesive";
        if (part.WaysOff.Any(w => w.OutOfSight))
            yield return "out of sight from outside";
        if (part.WaysOff.Any(w => w.Opens.Contains(Opening.SpringEnergy)))
            yield return "a spring pushes behind it";
        if (part.WaysOff.Any(w => w.Opens.Contains(Opening.LooseParts)))
            yield return "something loose falls out";
        if (part.WaysOff.Any(w => w.Destroys.Contains(part.Id)))
            yield return "does not survive removal";
        if (part.WaysOff.Length > 1)
            yield return $"{part.WaysOff.Length} ways off";
        if (part.Fit?.Orientation is { } way)
            yield return way;
        if (part.Number is { } number && model.Supersessions.Any(s => s.Old == number))
            yield return "its number was superseded";
    }
}
