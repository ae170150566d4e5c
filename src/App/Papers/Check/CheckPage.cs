using System.Security.Cryptography;
using System.Text;
using Ramwright.Paper.Signing;
using Ramwright.Records.Store;

namespace Ramwright.App.Papers.Check;

/// <summary>The page that checks papers in the browser, off line: the list of keys is part of it. As one file to give away, or served at <c>/verify</c>.</summary>
public static class CheckPage
{
    private static readonly Lazy<(string Page, string Script, string Style)> Parts = new(() => (Read("check.html"), Read("check.js"), Read("check.css")));

    /// <summary>One file with script and style in it. Its policy lets just these run, named by their SHA-256 (CSP level 3, 2.3.1), and reaches no network.</summary>
    /// <param name="list">A list of keys as <see cref="KeyListFile"/> writes it.</param>
    public static string OneFile(byte[] list)
    {
        var (page, script, style) = Parts.Value;
        var policy = $"default-src 'none'; script-src '{Hash(script)}'; style-src '{Hash(style)}'; form-action 'none'; base-uri 'none'";
        return page
            .Replace("<!--head-->", $"<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n<style>{style}</style>", StringComparison.Ordinal)
            .Replace("<!--foot-->", $"{DataOf(list)}\n<script>{script}</script>", StringComparison.Ordinal);
    }

    public static void MapCheckPage(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/verify", async (PaperArchive archive, Ledger ledger, HttpContext http) =>
        {
            var house = (await ledger.HouseAsync(http.RequestAborted)).Settings.ShopName;
            archive.Keys.Open(house).Dispose();
            return Results.Text(Linked(archive.Keys.Fresh(house)), "text/html; charset=utf-8");
        });
        routes.MapGet("/verify/check.js", () => Results.Text(Parts.Value.Script, "text/javascript; charset=utf-8"));
        routes.MapGet("/verify/check.css", () => Results.Text(Parts.Value.Style, "text/css; charset=utf-8"));
        routes.MapGet("/verify/keys.json", async (PaperArchive archive, Ledger ledger, HttpContext http) =>
            archive.Keys.List() is null ? Results.NotFound() : Results.Bytes(archive.Keys.Fresh((await ledger.HouseAsync(http.RequestAborted)).Settings.ShopName), "application/json"));
    }

    private static string Linked(byte[] list) => Parts.Value.Page
        .Replace("<!--head-->", "<link rel=\"stylesheet\" href=\"/verify/check.css\">", StringComparison.Ordinal)
        .Replace("<!--foot-->", $"<nav aria-label=\"Elsewhere\"><a href=\"/verify/keys.json\" download>The list of keys</a> · <a href=\"/\">To the rack</a></nav>\n{DataOf(list)}\n<script src=\"/verify/check.js\"></script>", StringComparison.Ordinal);

    /// <summary>Data, not script: no browser runs it. A sign that could end the block is written as its code, which leaves the canonical form as it was.</summary>
    private static string DataOf(byte[] list) => $"<script id=\"keys\" type=\"application/json\">{Encoding.UTF8.GetString(list).Replace("<", "\\u003c", StringComparison.Ordinal)}</script>";

    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Read(string name)
    {
        using var from = new StreamReader(typeof(CheckPage).Assembly.GetManifestResourceStream("check/" + name)!, Encoding.UTF8);
        return from.ReadToEnd();
    }
}
