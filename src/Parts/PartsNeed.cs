using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>What a job needs, under the numbers valid today.</summary>
public static class PartsNeed
{
    /// <summary>What a strip plan renews.</summary>
    public static ImmutableArray<NeedLine> Of(ServiceModel model, StripPlan plan) => Of(model, plan.Renewals);

    /// <summary>What these renewals take, in the model's order of parts.</summary>
    /// <remarks>A part renewed for two reasons is needed once: the larger count stands, not the sum. Parts that the model does not hold are left out; the reader refuses such references.</remarks>
    public static ImmutableArray<NeedLine> Of(ServiceModel model, IEnumerable<Renewal> renewals)
    {
        var counts = new Dictionary<NodeId, int>();
        foreach (var renewal in renewals.Where(r => r.Count > 0))
            counts[renewal.Part] = Math.Max(renewal.Count, counts.GetValueOrDefault(renewal.Part));
        return Of(model, counts);
    }

    /// <summary>So many of each part, in the model's order of parts.</summary>
    public static ImmutableArray<NeedLine> Of(ServiceModel model, IReadOnlyDictionary<NodeId, int> counts) =>
        [.. model.Parts.Where(p => counts.GetValueOrDefault(p.Id) > 0).Select(p => Line(model, p, counts[p.Id]))];

    /// <summary>One of each part and group of the model, as a list to choose from.</summary>
    public static ImmutableArray<NeedLine> Everything(ServiceModel model) => [.. model.Parts.Select(p => Line(model, p, p.Count))];

    private static NeedLine Line(ServiceModel model, Part part, int count)
    {
        var number = ValidNumber.Of(model, part.Number);
        var replaced = number != part.Number;
        return new(part.Id, part.Name, count, number, replaced ? part.Number : null, part.Price);
    }
}
