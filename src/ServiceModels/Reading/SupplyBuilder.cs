using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds kits, supersessions and made-up units.</summary>
internal static class SupplyBuilder
{
    public static Kit KitOf(string id, Facts facts) => new(new(id), facts.Text("name") ?? ModelBuilder.Words(id), facts.Text("number") ?? "", facts.Value<Money>("price"))
    {
        Contents = [.. facts.Numbers("contents").Select(c => new KitItem(new(c.Id), (int)c.Value))],
        Unfit = [.. facts.List<Facts>("unfit").Select(u => new UnfitItem(u.Text("what") ?? "", u.Text("part") is { } part ? new NodeId(part) : null, u.Value<int>("count") ?? 1, u.Text("why") ?? ""))],
    };

    public static MadeUpUnit UnitOf(string id, Facts facts) => new(new(id), facts.Text("name") ?? ModelBuilder.Words(id))
    {
        After = facts.Nodes("after"),
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        Tool = facts.Tool,
        Posture = facts.Posture,
        Operation = facts.Text("operation"),
        Cautions = ModelBuilder.CautionsOf(facts),
    };

    public static Supersession? SupersessionOf(Facts facts) =>
        facts.Text("old") is { } old && facts.Text("new") is { } next ? new(old, next, facts.Text("why")) : null;
}
