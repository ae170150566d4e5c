using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>Follows the supersessions of a model.</summary>
public static class ValidNumber
{
    /// <summary>The number to order today in place of <paramref name="number"/>; the number itself when nothing replaced it, null for null.</summary>
    /// <remarks>
    /// A chain is followed to its end. The linter refuses loops; should one come here all the same, the number as written is
    /// given back, because none in a loop is valid. Where one number was replaced twice, the later entry of the model counts.
    /// </remarks>
    public static string? Of(ServiceModel model, string? number)
    {
        if (number is null)
            return null;
        var current = number;
        for (var hops = 0; hops <= model.Supersessions.Length; hops++)
        {
            if (model.Supersessions.LastOrDefault(s => s.Old == current) is not { } replaced)
                return current;
            current = replaced.New;
        }
        return number;
    }
}
