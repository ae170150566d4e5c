using System.Text.Json;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Tests.Recordings;

/// <summary>A recording of the reference tool with what is known to have happened in it (truth.json).</summary>
internal sealed record Truth(string Name, Recording Recording, JsonElement All)
{
    private static readonly JsonDocument File = JsonDocument.Parse(System.IO.File.ReadAllBytes(Path.Combine(Folder, "truth.json")));

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "Recordings");

    public static IEnumerable<string> Names => File.RootElement.EnumerateObject().Select(p => p.Name);

    public double? At(string key) => All.GetProperty("outcome").GetProperty(key) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : null;

    public double? PauseFrom(string key) => All.GetProperty("outcome").TryGetProperty(key, out var pause) ? pause.GetProperty("t_from").GetDouble() : null;

    public double HoldBar => All.GetProperty("hold_bar").GetDouble();

    public bool HasConnector => All.GetProperty("parameters").GetProperty("load").GetInt32() == 1;

    public static Truth Of(string name)
    {
        using var bytes = System.IO.File.OpenRead(Path.Combine(Folder, name + ".csv"));
        var taken = Assert.IsType<RecordingAnswer.Taken>(RecordingReader.Read(name, bytes));
        Assert.Empty(taken.Notes);
        return new(name, taken.Recording, File.RootElement.GetProperty(name));
    }
}
