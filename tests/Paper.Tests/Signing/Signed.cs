using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Signing;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The made-up report, signed with a key made for the test, and the list that goes with it.</summary>
internal static class Signed
{
    public static readonly HouseKey Key = HouseKey.Make("Saltmarsh Tool Service", House.Noon);
    public static readonly SignedReport Report = SignedReport.Of(Proofs.Report with { Replaces = "SM-0409-P0" }, PaperSize.A4, UnitSystem.Metric, Key);

    public static readonly KeyList List = new()
    {
        House = "Saltmarsh Tool Service",
        AsOf = House.Noon,
        Keys = [new(Key.Id, [.. Key.PublicKey], new(2026, 11, 1))],
    };
}

/// <summary>A folder of its own that goes with the test.</summary>
internal sealed class Folder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("ramwright-paper-").FullName;

    public string Write(string name, byte[] bytes)
    {
        var path = System.IO.Path.Combine(Path, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
