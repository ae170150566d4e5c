using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Ramwright.Records.Events;
using Ramwright.Records.Store;

namespace Ramwright.App.Papers;

/// <summary>The drawer in which the papers of the house lie: one file each, by the paper's number, never written twice.</summary>
public sealed partial class PaperDrawer(string folder)
{
    /// <summary>Lays the paper in the drawer and returns the event that says so.</summary>
    /// <exception cref="IOException">The disk is full or the folder cannot be written.</exception>
    public ReportIssued Lay(ReportKind kind, string number, byte[] pdf, LedgerHead standsOn)
    {
        ArgumentNullException.ThrowIfNull(pdf);
        var path = PathOf(number) ?? throw new ArgumentException($"'{number}' is no number of a paper.", nameof(number));
        Directory.CreateDirectory(folder);
        var fresh = path + "." + Guid.NewGuid().ToString("N")[..8];
        File.WriteAllBytes(fresh, pdf);
        File.Move(fresh, path, overwrite: true); // the same number comes twice only when the form was sent twice
        return new(kind, number, Convert.ToHexStringLower(SHA256.HashData(pdf)), standsOn);
    }

    /// <summary>The paper's bytes; null when there is none of that number.</summary>
    public byte[]? Find(string number) => PathOf(number) is { } path && File.Exists(path) ? File.ReadAllBytes(path) : null;

    /// <summary>Where the paper lies or would lie; null when the text is no number of a paper.</summary>
    public string? PathOf(string number) => Number().IsMatch(number) ? Path.Combine(folder, number + ".pdf") : null;

    [GeneratedRegex(@"\A[A-Z]{1,4}-[0-9]{4,7}-[A-Z]{1,2}[0-9]{1,4}\z", RegexOptions.ExplicitCapture, 100)]
    private static partial Regex Number();
}
