using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;

namespace Ramwright.App.Tests.CommandLine;

/// <summary>A command line run in this process: exit status, standard output, standard error.</summary>
internal sealed record Run(int Exit, string Data, string Words)
{
    public JsonObject Json => JsonNode.Parse(Data)!.AsObject();

    public static async Task<Run> Of(params string[] args)
    {
        using var data = new StringWriter();
        using var words = new StringWriter();
        var exit = await new RamwrightCommand(data, words).RunAsync(args, TestContext.Current.CancellationToken);
        return new Run(exit, data.ToString(), words.ToString());
    }

    /// <summary>A line as a person types it, split at blanks; double quotes hold a word together.</summary>
    public static Task<Run> Line(string line) => Of(Split(line));

    private static string[] Split(string line)
    {
        var words = new List<string>();
        var quoted = line.Split('"');
        for (var i = 0; i < quoted.Length; i++)
        {
            if (i % 2 == 1)
                words.Add(quoted[i]);
            else
                words.AddRange(quoted[i].Split(' ', StringSplitOptions.RemoveEmptyEntries));
        }

        return [.. words];
    }
}

/// <summary>A folder of its own that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("ramwright-test-").FullName;

    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
