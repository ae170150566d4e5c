using System.Security.Cryptography;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>The house's recordings as files, each once, under the hash of its bytes.</summary>
public sealed class StrokeFiles(string folder)
{
    /// <summary>Largest file that the bench takes, in bytes; the command line reads larger ones.</summary>
    public const long Largest = 64L << 20;

    /// <summary>Keeps the bytes, whole or not at all.</summary>
    /// <returns>Their SHA-256 in 64 hexadecimal digits.</returns>
    public async Task<string> PutAsync(Stream bytes, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        Directory.CreateDirectory(folder);
        var written = Path.Combine(folder, Path.GetRandomFileName() + ".new");
        string sha;
        await using (var file = File.Create(written))
        {
            await bytes.CopyToAsync(file, stop);
            file.Position = 0;
            sha = Convert.ToHexStringLower(await SHA256.HashDataAsync(file, stop));
        }

        File.Move(written, PathOf(sha), overwrite: true);
        return sha;
    }

    /// <summary>Where the file of that hash lies; null when it is not there.</summary>
    public string? Find(string sha256)
    {
        var known = sha256 is { Length: 64 } && sha256.All(char.IsAsciiHexDigitLower);
        return known && File.Exists(PathOf(sha256)) ? PathOf(sha256) : null;
    }

    private string PathOf(string sha256) => Path.Combine(folder, sha256 + ".csv");
}
