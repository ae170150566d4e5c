namespace Ramwright.House.Tests;

/// <summary>The checkout as the house rules read it: text files, no build output.</summary>
internal static class House
{
    private static readonly string[] NotRead = ["bin", "obj", ".git", ".build", "node_modules"];

    public static string Root { get; } = FindRoot();

    public static IEnumerable<string> Rooms => Directory.GetDirectories(Path.Combine(Root, "src")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal);

    /// <summary>Every C# file below a folder of the checkout, migrations left out.</summary>
    public static IEnumerable<SourceFile> Code(string folder) => Files(folder, ".cs").Where(f => !f.Path.Contains("/Migrations/", StringComparison.Ordinal));

    /// <summary>Every file with one of the endings below a folder of the checkout.</summary>
    public static IEnumerable<SourceFile> Files(string folder, params string[] endings) =>
        Walk(Path.Combine(Root, folder))
            .Where(p => endings.Any(e => p.EndsWith(e, StringComparison.Ordinal)))
            .Order(StringComparer.Ordinal)
            .Select(p => new SourceFile(Path.GetRelativePath(Root, p).Replace('\\', '/'), File.ReadAllLines(p)));

    private static IEnumerable<string> Walk(string folder)
    {
        if (!Directory.Exists(folder))
            yield break;
        foreach (var file in Directory.GetFiles(folder))
            yield return file;
        foreach (var below in Directory.GetDirectories(folder).Where(d => !NotRead.Contains(Path.GetFileName(d), StringComparer.Ordinal)))
        {
            foreach (var file in Walk(below))
                yield return file;
        }
    }

    private static string FindRoot()
    {
        var at = AppContext.BaseDirectory;
        while (at is not null && !File.Exists(Path.Combine(at, "Ramwright.slnx")))
            at = Path.GetDirectoryName(at);
        return at ?? throw new InvalidOperationException("The house rules must run inside a checkout: no Ramwright.slnx was found above the test.");
    }
}

/// <summary>A file of the checkout, by its path from the root.</summary>
internal sealed record SourceFile(string Path, string[] Lines)
{
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);
}

/// <summary>A broken rule: where, and what to do about it.</summary>
internal sealed record Broken(string Path, int Line, string What)
{
    public static void None(IEnumerable<Broken> broken, string remedy)
    {
        var all = broken.ToList();
        Assert.True(all.Count == 0, $"{remedy}\n{string.Join('\n', all.Select(b => $"  {b.Path}:{b.Line}: {b.What}"))}");
    }
}
