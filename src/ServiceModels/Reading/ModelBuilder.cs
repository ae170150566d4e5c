using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds the model from the checked values.</summary>
internal static class ModelBuilder
{
    /// <summary>The draft; null when the file is no mapping at all. Mistakes are in the list.</summary>
    public static Draft? Build(YamlNode root, MistakeList mistakes, string fingerprint)
    {
        if (root is not YamlMapping mapping)
        {
            mistakes.Add(root.At, "the file holds no keys", "begin it with 'format: ramwright/1'; docs/service-model.md shows ten lines that suffice", "wrong-form");
            return null;
        }

        var names = new NameBook { PosturesListed = mapping.Find("postures") is not null };
        var facts = SectionReader.Read(mapping, ModelKeys.Root, new(mistakes, names));
        names.Answer(mistakes);
        var limits = LimitsOf(facts.Section("limits"));
        return new(Assemble(facts, limits, names, fingerprint), mapping, limits is not null);
    }

    private static ServiceModel Assemble(Facts facts, Limits? limits, NameBook names, string fingerprint) => new()
    {
        Tool = ToolOf(facts.Section("tool") ?? Facts.None),
        Limits = limits ?? Placeholder,
        Fluid = facts.Section("fluid") is { } f && f.Text("class") is { } cls ? new(cls, f.Value<int>("grade"), f.Quantity<Volume>("capacity")) { PricePerLitre = f.Value<Money>("price") } : null,
        States = [.. facts.Map("states").Select(s => ShopBuilder.StateOf(s.Id, s.Facts))],
        Tools = [.. facts.Map("tools").Select(t => ShopBuilder.ToolOf(t.Id, t.Facts)).OfType<ShopTool>()],
        Postures = PosturesOf(facts, names),
        Parts = [.. facts.Map("parts").Select(p => PartBuilder.PartOf(p.Id, p.Facts))],
        Kits = [.. facts.Map("kits").Select(k => SupplyBuilder.KitOf(k.Id, k.Facts))],
        Units = [.. facts.Map("units").Select(u => SupplyBuilder.UnitOf(u.Id, u.Facts))],
        Supersessions = [.. facts.List<Facts>("supersessions").Select(SupplyBuilder.SupersessionOf).OfType<Supersession>()],
        Behaviour = facts.Section("behaviour") is { } b ? BehaviourBuilder.BehaviourOf(b) : null,
        Faults = [.. facts.Map("faults").Select(x => FindBuilder.FaultOf(x.Id, x.Facts))],
        Symptoms = [.. facts.Map("symptoms").Select(x => FindBuilder.SymptomOf(x.Id, x.Facts))],
        Checks = [.. facts.Map("checks").Select(x => FindBuilder.CheckOf(x.Id, x.Facts))],
        Remedies = [.. facts.Map("remedies").Select(x => FindBuilder.RemedyOf(x.Id, x.Facts))],
        Fingerprint = fingerprint,
    };

    /// <summary>Stands in for limits that were mistaken, so that the rest can be looked at; such a model is never handed out.</summary>
    private static Limits Placeholder { get; } = new()
    {
        Pressure = new(Pressure.FromBar(1), Pressure.FromBar(2)),
        Nominal = Pressure.FromBar(1.5),
        Maximum = Pressure.FromBar(3),
        ProofRuns = 2,
        Rest = TimeSpan.Zero,
    };

    private static ToolIdentity ToolOf(Facts tool) => new(tool.Text("id") ?? "", tool.Text("name") ?? "", tool.Text("maker"), tool.Value<ToolKind>("kind") ?? default)
    {
        Mass = tool.Quantity<Mass>("mass"),
        Revision = tool.Text("revision"),
        Source = tool.Text("source"),
        Notes = tool.Text("notes"),
    };

    private static Limits? LimitsOf(Facts? limits) =>
        limits?.Value<PressureWindow>("pressure") is { } window && limits.Quantity<Pressure>("maximum") is { } maximum && limits.Value<int>("proof-runs") is { } runs
            ? new Limits
            {
                Pressure = window,
                Nominal = limits.Quantity<Pressure>("nominal") ?? window.Middle,
                Maximum = maximum,
                Force = limits.Value<ForceWindow>("force"),
                ProofRuns = runs,
                Rest = limits.Seconds("rest") ?? TimeSpan.FromSeconds(30),
                Rule = limits.Value<DecisionRule>("rule") ?? default,
            }
            : null;

    private static ImmutableArray<Posture> PosturesOf(Facts facts, NameBook names) => names.PosturesListed
        ? [.. facts.Map("postures").Select(p => new Posture(new(p.Id), p.Facts.Text("name") ?? Words(p.Id)) { Change = p.Facts.Minutes("change") })]
        : [.. names.FreePostures.Select(id => new Posture(new(id), Words(id)))];

    /// <summary>An id as words, for an entry without a name.</summary>
    public static string Words(string id) => id.Replace('-', ' ');

    /// <summary>The cautions of a section, whether one or several were written.</summary>
    public static ImmutableArray<Caution> CautionsOf(Facts facts)
    {
        IEnumerable<Facts> written = facts.Section("caution") is { } one ? [one, .. facts.List<Facts>("cautions")] : facts.List<Facts>("cautions");
        return [.. written.Select(c => new Caution(c.Value<CautionLevel>("level") ?? default, c.Text("hazard") ?? "", c.Text("text") ?? ""))];
    }

    public static ImmutableArray<Cause> CausesOf(Facts facts, string key) => [.. facts.Numbers(key).Select(c => new Cause(new(c.Id), c.Value))];
}
