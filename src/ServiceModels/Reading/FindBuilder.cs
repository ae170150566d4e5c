using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds faults, symptoms, checks and remedies.</summary>
internal static class FindBuilder
{
    public static Fault FaultOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = Name(id, facts),
        Rate = facts.Value<double>("rate") ?? 0,
        Parts = facts.Nodes("parts"),
    };

    public static Symptom SymptomOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = Name(id, facts),
        Group = (facts.Value<SymptomGroup>("group") ?? default).ToString().ToLowerInvariant(),
        Leak = facts.Value<double>("leak") ?? 0,
        Causes = ModelBuilder.CausesOf(facts, "causes"),
    };

    public static Check CheckOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = Name(id, facts),
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        Needs = facts.Nodes("needs"),
        Tool = facts.Tool,
        Cautions = ModelBuilder.CautionsOf(facts),
        Live = facts.Value<bool>("live") ?? false,
        InsteadOf = [.. facts.List<string>("instead-of").Select(s => new SymptomId(s))],
        Outcomes = [.. facts.Map("outcomes").Select(o => new CheckOutcome(o.Id, Name(o.Id, o.Facts), o.Facts.Value<double>("when-sound") ?? 0, ModelBuilder.CausesOf(o.Facts, "when")))],
    };

    public static Remedy RemedyOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = Name(id, facts),
        Frees = facts.Nodes("frees"),
        Renews = facts.Nodes("renews"),
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        Mends = ModelBuilder.CausesOf(facts, "mends"),
    };

    private static string Name(string id, Facts facts) => facts.Text("name") ?? ModelBuilder.Words(id);
}
