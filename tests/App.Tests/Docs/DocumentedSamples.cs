using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Docs;

/// <summary>
/// Every command line in the pages under <c>docs/</c> prints what the page says it prints. A sample is a block indented by four blanks
/// whose first line starts with <c>$ ramwright</c>; a file that it reads is the code fence under <c>&lt;!-- file: NAME --&gt;</c>, or was written by <c>--out</c> above; a line
/// <c>...</c> stands for the rest. With RAMWRIGHT_REWRITE_DOCS set the pages are written anew.
/// </summary>
public sealed class DocumentedSamples
{
    private const string Indent = "    ";

    public static TheoryData<string> Pages =>
        [.. new[] { "getting-started", "how-to", "explanation" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Checkout.Root, "docs", folder), "*.md"))
            .Where(page => File.ReadAllText(page).Contains("\n    $ ramwright ", StringComparison.Ordinal))
            .Select(page => Path.GetRelativePath(Checkout.Root, page)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Print_what_the_page_says(string page)
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(Checkout.Root, page);
        var written = await File.ReadAllLinesAsync(path, TestContext.Current.CancellationToken);
        var names = WriteFiles(written, folder);
        List<string> printed = [];
        for (var i = 0; i < written.Length; i++)
        {
            printed.Add(written[i]);
            if (!written[i].StartsWith(Indent + "$ ramwright ", StringComparison.Ordinal))
                continue;
            var said = Said(written, i + 1);
            i += said.Count;
            if (said.Count == 0)
                continue;
            printed.AddRange(Shown(await Output(written[i - said.Count], names, folder), said).Select(l => (Indent + l).TrimEnd()));
        }

        if (Environment.GetEnvironmentVariable("RAMWRIGHT_REWRITE_DOCS") is not null)
            await File.WriteAllTextAsync(path, string.Join('\n', printed) + "\n", TestContext.Current.CancellationToken);
        Assert.Equal(string.Join('\n', written), string.Join('\n', printed));
    }

    /// <summary>The indented lines under a sample; an empty line belongs to them where they go on behind it.</summary>
    private static List<string> Said(string[] written, int from)
    {
        bool IsSaid(int at) => at < written.Length && written[at].StartsWith(Indent, StringComparison.Ordinal) && !written[at].StartsWith(Indent + "$", StringComparison.Ordinal);
        var to = from;
        while (IsSaid(to) || (to > from && to < written.Length && written[to].Length == 0 && IsSaid(to + 1)))
            to++;
        return [.. written[from..to].Select(l => l.Length == 0 ? l : l[Indent.Length..])];
    }

    /// <summary>As many lines as the page shows, where it ends with <c>...</c>; else all.</summary>
    private static IEnumerable<string> Shown(List<string> output, List<string> said) =>
        said is [.., "..."] ? [.. output.Take(said.Count - 1), "..."] : output;

    private static async Task<List<string>> Output(string sample, List<string> names, TemporaryFolder folder)
    {
        var line = sample[(Indent.Length + "$ ramwright ".Length)..];
        var words = line.Split(' ');
        if (Array.IndexOf(words, "--out") is >= 0 and var at && !names.Contains(words[at + 1], StringComparer.Ordinal))
            names.Add(words[at + 1]);
        foreach (var name in names)
            line = line.Replace(name, Path.Combine(folder.Path, name), StringComparison.Ordinal);
        var run = await Run.Line(line);
        return [.. (run.Data + run.Words).Replace(folder.Path + "/", "", StringComparison.Ordinal).TrimEnd().Split('\n').Select(l => l.TrimEnd())];
    }

    private static List<string> WriteFiles(string[] lines, TemporaryFolder folder)
    {
        var names = new List<string>();
        for (var i = 0; i < lines.Length - 1; i++)
        {
            if (!lines[i].StartsWith("<!-- file: ", StringComparison.Ordinal))
                continue;
            var name = lines[i]["<!-- file: ".Length..^" -->".Length];
            folder.Write(name, string.Concat(lines.Skip(i + 2).TakeWhile(l => l != "```").Select(l => l + "\n")));
            names.Add(name);
        }

        return names;
    }
}
