using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests;

/// <summary>Small models written in one line per part; all of them invented.</summary>
internal static class Models
{
    public static readonly Rates Rates = new() { LabourPerHour = new Money(60m, "EUR") };

    public static ServiceModel Of(params Part[] parts) => Of([], parts);

    public static ServiceModel Of(ImmutableArray<State> states, params Part[] parts) => new()
    {
        Tool = new ToolIdentity("invented", "Invented", "Corrie", ToolKind.Compression),
        Limits = new Limits
        {
            Pressure = new PressureWindow(Pressure.FromBar(679), Pressure.FromBar(721)),
            Nominal = Pressure.FromBar(700),
            Maximum = Pressure.FromBar(735),
            ProofRuns = 12,
            Rest = TimeSpan.FromSeconds(40),
        },
        States = states,
        Parts = [.. parts],
        Fingerprint = new string('0', 64),
    };

    public static NodeId Id(string id) => new(id);

    public static ImmutableArray<NodeId> Ids(string ids) =>
        [.. ids.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => new NodeId(id))];

    public static Part Part(string id, params WayOff[] ways) => new() { Id = new NodeId(id), Name = id.Replace('-', ' '), WaysOff = [.. ways] };

    public static WayOff Way(double minutes, string needs = "", string? tool = null, string? posture = null) => new()
    {
        Needs = Ids(needs),
        Time = TimeSpan.FromMinutes(minutes),
        Tool = tool is null ? null : new ToolId(tool),
        Posture = posture is null ? null : new PostureId(posture),
    };

    public static State State(string id, double minutes, string needs = "", bool isolates = false) => new()
    {
        Id = new NodeId(id),
        Name = id.Replace('-', ' '),
        Isolates = isolates,
        Reach = new Operation { Text = string.Create(CultureInfo.InvariantCulture, $"bring about {id}"), Needs = Ids(needs), Time = TimeSpan.FromMinutes(minutes) },
    };
}
