using Ramwright.Metrology.Input;

namespace Ramwright.ServiceModels.Tests;

/// <summary>The models that come with the program.</summary>
public sealed class DemoModelTests
{
    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Repository.Folder("models"), "*.yaml").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Reads_without_a_mistake(string file)
    {
        var reading = ModelReader.ReadFile(file);
        Assert.True(reading is ModelReading.Read, reading is ModelReading.Refused r ? MistakeText.Write(r.Mistakes) : "");
    }
}
