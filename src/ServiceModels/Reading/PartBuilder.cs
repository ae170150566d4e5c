using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Builds parts with their ways off, fits and inspections.</summary>
internal static class PartBuilder
{
    private const double SecondsPerYear = 365.25 * 86_400;

    public static Part PartOf(string id, Facts facts) => new()
    {
        Id = new(id),
        Name = facts.Text("name") ?? ModelBuilder.Words(id),
        Number = facts.Text("number"),
        Revision = facts.Text("revision"),
        Count = facts.Value<int>("count") ?? 1,
        Material = facts.Text("material"),
        Size = facts.Of<SealSize>("size"),
        Renew = facts.Value<RenewalRule>("renew") ?? default,
        Price = facts.Value<Money>("price"),
        ShelfLife = facts.Seconds("shelf-life"),
        WaysOff = [.. facts.List<Facts>("ways-off").Select(WayOffOf)],
        Fit = facts.Section("fit") is { } fit ? FitOf(fit) : null,
        Inspections = [.. facts.List<Facts>("inspections").Select(InspectionOf)],
        Place = facts.Section("place") is { } place ? PlaceOf(place) : null,
        Lifetime = facts.Section("lifetime") is { } life && life.Value<double>("shape") is { } shape && life.Value<double>("life") is { } seconds ? new(shape, seconds / SecondsPerYear) : null,
        Note = facts.Text("note"),
        IsFastener = facts.Value<bool>("fastener") ?? false,
    };

    private static WayOff WayOffOf(Facts facts) => new()
    {
        Needs = facts.Nodes("needs"),
        Operation = facts.Text("operation"),
        Tool = facts.Tool,
        Posture = facts.Posture,
        Time = facts.Minutes("minutes") ?? TimeSpan.Zero,
        TimeSpread = facts.Value<double>("spread"),
        HeldBy = facts.Of<Holding>("held-by"),
        Breakaway = facts.Value<Torque>("breakaway"),
        BreakawayForce = facts.Value<Force>("breakaway"),
        Cautions = ModelBuilder.CautionsOf(facts),
        Destroys = facts.Nodes("destroys"),
        Disturbs = facts.Nodes("disturbs"),
        Opens = facts.List<Opening>("opens"),
        Risk = facts.Section("risk") is { } risk && risk.Value<double>("chance") is { } chance ? new(chance, risk.Nodes("damages")) : null,
        OutOfSight = facts.Value<bool>("out-of-sight") ?? false,
    };

    private static Fit FitOf(Facts facts) => new()
    {
        After = facts.Nodes("after"),
        Unit = facts.Text("unit") is { } unit ? new(unit) : null,
        Operation = facts.Text("operation"),
        Tool = facts.Tool,
        Posture = facts.Posture,
        Time = facts.Minutes("minutes"),
        Torque = facts.Of<TorqueSpec>("torque"),
        Lubricant = facts.Text("lubricate"),
        Orientation = facts.Text("orientation"),
        Prime = facts.Text("prime"),
        PrimeTime = facts.Minutes("prime-minutes"),
        Fill = facts.Quantity<Volume>("fill"),
        FillTime = facts.Minutes("fill-minutes"),
        Bleed = facts.Text("bleed"),
        BleedTime = facts.Minutes("bleed-minutes"),
        Cautions = ModelBuilder.CautionsOf(facts),
    };

    private static Inspection InspectionOf(Facts facts) => new()
    {
        Id = new(facts.Text("id") ?? ""),
        Look = facts.Text("look") ?? "",
        Reuse = facts.Text("reuse") ?? "",
        Measure = facts.Section("measure") is { } m ? new(m.Text("what") ?? "", m.Quantity<Length>("least"), m.Quantity<Length>("most")) : null,
        Time = facts.Minutes("minutes") ?? TimeSpan.FromMinutes(0.5),
        ChanceBad = facts.Value<double>("chance-bad"),
        RenewsWhenBad = facts.Nodes("renews"),
        AddsWhenBad = facts.Nodes("adds"),
    };

    private static MapPlace? PlaceOf(Facts facts) =>
        facts.Quantity<Length>("from") is { } from && facts.Quantity<Length>("to") is { } to && facts.Quantity<Length>("outer") is { } outer
            ? new(from, to, facts.Quantity<Length>("inner") ?? default, outer, facts.Quantity<Length>("offset") ?? default) { Outline = facts.Value<Outline>("outline") ?? default }
            : null;
}
