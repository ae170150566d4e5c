namespace Ramwright.Instruments.Tests;

/// <summary>A folder of its own that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("ramwright-test-").FullName;

    public string Name(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(Name(name), text);
        return Name(name);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
