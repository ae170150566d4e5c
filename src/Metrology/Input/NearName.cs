namespace Ramwright.Metrology.Input;

/// <summary>Finds the name that was probably meant.</summary>
public static class NearName
{
    private const int LongestCompared = 64;

    /// <summary>
    /// The nearest of the known names by edits (insert, delete, replace, swap of neighbours: the restricted Damerau-Levenshtein distance),
    /// at most one edit in three characters; null when none is near. The first of equals wins.
    /// </summary>
    public static string? Find(string written, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(written);
        ArgumentNullException.ThrowIfNull(known);
        if (written.Length is 0 or > LongestCompared)
            return null;
        var best = Math.Max(1, written.Length / 3) + 1;
        string? nearest = null;
        foreach (var name in known)
        {
            if (name.Length > LongestCompared || Math.Abs(name.Length - written.Length) >= best)
                continue;
            var edits = Edits(written, name);
            if (edits < best)
                (best, nearest) = (edits, name);
        }

        return nearest;
    }

    /// <summary>Edits between two names of at most 64 characters, case set aside.</summary>
    public static int Edits(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        if (Math.Max(a.Length, b.Length) > LongestCompared)
            throw new ArgumentOutOfRangeException(nameof(a), "Names of at most 64 characters are compared.");
        Span<int> before = stackalloc int[b.Length + 1];
        Span<int> above = stackalloc int[b.Length + 1];
        Span<int> row = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            above[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = Same(a[i - 1], b[j - 1]);
                row[j] = Math.Min(Math.Min(above[j] + 1, row[j - 1] + 1), above[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }

            above.CopyTo(before);
            row.CopyTo(above);
        }

        return above[b.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
