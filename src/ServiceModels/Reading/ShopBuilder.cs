using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds states and shop tools.</summary>
internal static class ShopBuilder
{
    public static State StateOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = facts.Text("name") ?? ModelBuilder.Words(id),
        Reach = facts.Section("reach") is { } reach ? ReachOf(reach) : null,
        Undo = facts.Section("undo") is { } undo ? UndoOf(undo) : null,
        Loses = facts.Quantity<Volume>("loses"),
        Isolates = facts.Value<bool>("isolates") ?? false,
    };

    public static ShopTool? ToolOf(string id, Facts facts)
    {
        var name = facts.Text("name") ?? ModelBuilder.Words(id);
        if (facts.Value<ToolOrigin>("kind") != ToolOrigin.Made)
            return new ShopTool.Bought { Id = new(id), Name = name, Change = facts.Minutes("change"), Price = facts.Value<Money>("price"), SafeTorque = facts.Quantity<Torque>("safe-torque") };
        return new ShopTool.Made
        {
            Id = new(id),
            Name = name,
            Change = facts.Minutes("change"),
            Shape = facts.Value<MadeShape>("shape") ?? default,
            Dimensions = MadeDimensions.Names.Where(facts.Has).ToImmutableSortedDictionary(n => n, n => facts.Quantity<Length>(n)!.Value, StringComparer.Ordinal),
            Prongs = facts.Value<int>("prongs") ?? 1,
            OffsetAngle = facts.Quantity<Angle>("offset-angle"),
            Material = facts.Text("material"),
        };
    }

    private static Operation ReachOf(Facts facts) => new()
    {
        Text = facts.Text("operation") ?? "",
        Needs = facts.Nodes("needs"),
        Tool = facts.Tool,
        Posture = facts.Posture,
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        TimeSpread = facts.Value<double>("spread"),
        Cautions = ModelBuilder.CautionsOf(facts),
    };

    private static Undo UndoOf(Facts facts) => new()
    {
        Text = facts.Text("operation") ?? "",
        After = facts.Nodes("after"),
        Before = facts.Nodes("before"),
        Tool = facts.Tool,
        Posture = facts.Posture,
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        Kind = facts.Value<UndoKind>("kind") ?? default,
        Volume = facts.Quantity<Volume>("volume"),
        Cautions = ModelBuilder.CautionsOf(facts),
    };
}
