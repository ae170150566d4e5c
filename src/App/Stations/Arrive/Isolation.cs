using System.Collections.Immutable;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Arrive;

/// <summary>One thing that makes the tool safe, signed before anything else is done to it.</summary>
/// <param name="Act">What to do, in the imperative.</param>
/// <param name="Signed">What the signature says.</param>
public sealed record SafetyStep(NodeId State, string Act, string Signed, ImmutableArray<Caution> Cautions);

/// <summary>Battery out, pressure released: the first sign-offs of every job, whatever the model knows.</summary>
public static class Isolation
{
    private static readonly Caution Pack = new(CautionLevel.Warning, "battery-short",
        "A lithium pack that is shorted, wet or swollen can burn. Take it off first, keep its contacts covered, and lay a damaged one outside on stone");

    private static readonly Caution Jet = new(CautionLevel.Danger, "oil-injection",
        "Oil under pressure goes through glove and skin. Keep hands off joints and hoses. An injection injury is an emergency at once, however small it looks");

    private static readonly ImmutableArray<SafetyStep> Standard =
    [
        new(new("battery-removed"), "Take the battery pack off", "The battery is out", [Pack]),
        new(new("pressure-released"), "Release the pressure and see the ram go back", "The pressure is released", [Jet]),
    ];

    /// <summary>The model's own isolating states in their order, the house's two where it names none.</summary>
    public static ImmutableArray<SafetyStep> Of(ServiceModel model)
    {
        ImmutableArray<SafetyStep> own = [.. model.States.Where(s => s.Isolates).Select(Step)];
        return own.IsEmpty ? Standard : own;
    }

    /// <summary>The first that is not signed yet; null when the tool is safe.</summary>
    public static SafetyStep? Next(ServiceModel model, JobState job) =>
        Of(model).FirstOrDefault(step => job.SafeStates.TrueForAll(e => e.What.State != step.State));

    private static SafetyStep Step(State state)
    {
        var cautions = state.Reach?.Cautions ?? [];
        if (cautions.IsEmpty)
            cautions = state.Id.Value.Contains("battery", StringComparison.Ordinal) ? [Pack] : [Jet];
        return new(state.Id, Web.Parts.Sentence.Head(state.Reach?.Text ?? state.Name), Web.Parts.Sentence.Head(state.Name), cautions);
    }
}
