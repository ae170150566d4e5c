using System.Collections.Immutable;

namespace Ramwright.ServiceModels;

/// <summary>The pages of docs/reference/mistakes, one for each code: what it is, why it matters at the tool, a bad and a good sample.</summary>
public static class MistakePages
{
    private const string Folder = "mistakes/";

    private static readonly Lazy<ImmutableSortedDictionary<string, string>> Names = new(() => typeof(MistakePages).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
        .ToImmutableSortedDictionary(n => n[Folder.Length..^".md".Length], n => n, StringComparer.Ordinal));

    /// <summary>Every code that has a page, in alphabetical order.</summary>
    public static IEnumerable<string> Codes => Names.Value.Keys;

    /// <summary>The page of a code as Markdown; null when no mistake has this code.</summary>
    public static string? Find(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        if (!Names.Value.TryGetValue(code, out var name))
            return null;
        using var stream = typeof(MistakePages).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
