using System.Collections.Frozen;
using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Ramwright.App.Web.Assets;

/// <summary>One file that travels inside the assembly.</summary>
/// <param name="Tag">First 12 hex digits of the SHA-256 of its bytes: part of its address, so that it may be cached for ever.</param>
public sealed record Asset(byte[] Bytes, byte[]? Brotli, string MediaType, string Tag);

/// <summary>Styles, scripts, fonts and pictures of the bench. All style files go out as one, <c>/sheet.css</c>, in the order of their names.</summary>
public static class EmbeddedAssets
{
    private const string Root = "wwwroot/";

    private static readonly FrozenDictionary<string, Asset> All = Load();

    /// <summary>The address of an asset with its tag.</summary>
    public static string Url(string path) => $"{path}?v={All[path].Tag}";

    public static Asset? Find(string path) => All.GetValueOrDefault(path);

    private static FrozenDictionary<string, Asset> Load()
    {
        var assembly = typeof(EmbeddedAssets).Assembly;
        var names = assembly.GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToArray();
        var found = new Dictionary<string, Asset>(StringComparer.Ordinal);
        foreach (var name in names.Where(n => !n.EndsWith(".css", StringComparison.Ordinal)))
            found["/" + name[Root.Length..]] = Make(Read(assembly, name), name);
        var sheet = new StringBuilder();
        foreach (var name in names.Where(n => n.EndsWith(".css", StringComparison.Ordinal)))
            sheet.Append(Encoding.UTF8.GetString(Read(assembly, name))).Append('\n');
        sheet.Append(Paper.Drawing.PictureCss.Sheet);
        found["/sheet.css"] = Make(Encoding.UTF8.GetBytes(sheet.ToString()), "sheet.css");
        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static byte[] Read(Assembly assembly, string name)
    {
        using var from = assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[from.Length];
        from.ReadExactly(bytes);
        return bytes;
    }

    private static Asset Make(byte[] bytes, string name)
    {
        var type = Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".svg" => "image/svg+xml",
            ".woff2" => "font/woff2",
            ".txt" => "text/plain; charset=utf-8",
            _ => "application/octet-stream",
        };
        var packed = type.StartsWith("text/", StringComparison.Ordinal) ? Pack(bytes) : null;
        return new(bytes, packed, type, Convert.ToHexStringLower(SHA256.HashData(bytes))[..12]);
    }

    private static byte[] Pack(byte[] bytes)
    {
        using var to = new MemoryStream();
        using (var brotli = new BrotliStream(to, CompressionLevel.Fastest))
            brotli.Write(bytes);
        return to.ToArray();
    }
}
