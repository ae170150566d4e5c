using System.Text.Json;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels;

namespace Ramwright.Hydraulics.Tests.Identification;

/// <summary>The recordings of the invented reference tool with what was planted in each (Recordings/truth.json), read once.</summary>
internal sealed class Planted
{
    private static readonly JsonElement Truth = JsonDocument.Parse(File.ReadAllText(Folder("truth.json"))).RootElement;

    private static readonly Dictionary<string, string> Ids = new(StringComparer.Ordinal)
    {
        ["air in the oil"] = FaultId.AirInOil,
        ["delivery check valve leaking back"] = FaultId.DeliveryCheckLeaks,
        ["inlet check valve leaking back"] = FaultId.InletCheckLeaks,
        ["ram seal or relief seat leaking"] = FaultId.BypassLeaks,
        ["pump filling poorly"] = FaultId.LowFill,
        ["relief set low"] = FaultId.ReliefLow,
        ["relief set high"] = FaultId.ReliefHigh,
        ["weak battery or motor"] = FaultId.WeakDrive,
        ["reservoir short of oil"] = FaultId.OilShort,
        ["ram binding"] = FaultId.RamBinds,
        ["seal friction high"] = FaultId.SealFriction,
    };

    private static readonly Dictionary<string, Planted> Kept = new(StringComparer.Ordinal);

    private readonly JsonElement _truth;

    private Planted(string name)
    {
        _truth = Truth.GetProperty(name);
        (Recording, Tool) = (Read(name), ToolOf(name.StartsWith("port-", StringComparison.Ordinal) ? "corrie-85-port" : "corrie-85"));
        SensorSeconds = _truth.GetProperty("recording").GetProperty("lag_ms").GetDouble() / 1000;
        Answer = Assert.IsType<IdentificationAnswer.Told>(StrokeIdentifier.Read(Recording, Tool, SensorSeconds));
    }

    public static TheoryData<string> Names => [.. Truth.EnumerateObject().Select(p => p.Name)];

    public Recording Recording { get; }

    public StrokeParameters Tool { get; }

    public double SensorSeconds { get; }

    public IdentificationAnswer.Told Answer { get; }

    public bool Closes => _truth.GetProperty("outcome").GetProperty("t_close").ValueKind == JsonValueKind.Number;

    public bool Connector => Parameter("load") > 0;

    public static Planted Of(string name)
    {
        lock (Kept)
            return Kept.TryGetValue(name, out var kept) ? kept : Kept[name] = new Planted(name);
    }

    public static Recording Read(string name)
    {
        using var bytes = File.OpenRead(Folder(name + ".csv"));
        return Assert.IsType<RecordingAnswer.Taken>(RecordingReader.Read(name, bytes)).Recording;
    }

    public static StrokeParameters ToolOf(string id)
    {
        var reading = Assert.IsType<ModelReading.Read>(new ModelShelf(Path.Combine(AppContext.BaseDirectory, "models")).Read(id));
        return Assert.IsType<StrokeParametersReading.Ready>(StrokeParametersReading.Of(reading.Model)).Tool;
    }

    public double Parameter(string name) => _truth.GetProperty("parameters").GetProperty(name).GetDouble();

    public double? Outcome(string name) => _truth.GetProperty("outcome").GetProperty(name) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : null;

    public HashSet<string> Faults(string list) => [.. _truth.GetProperty(list).EnumerateArray().Select(f => Ids[f.GetString()!])];

    /// <summary>Leak in a pause: past the ram, and through the delivery check with inlet check and clearance behind it (none behind it with a port).</summary>
    public double HoldLeak()
    {
        var (delivery, behind) = (Parameter("cdel"), Parameter("cin") + Parameter("cpist"));
        return Parameter("cram") + (Tool.Inlet == Ramwright.ServiceModels.Model.InletKind.Port ? delivery : delivery * behind / (delivery + behind));
    }

    private static string Folder(string file) => Path.Combine(AppContext.BaseDirectory, "Recordings", file);
}
