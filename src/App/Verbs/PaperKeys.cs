using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Metrology.Input;
using Ramwright.Paper.Signing;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary>What the verbs on the house's keys have in common.</summary>
internal static class PaperKeys
{
    public static KeyRing In(string folder) => new(Path.Combine(folder, KeyRing.FolderName), TimeProvider.System);

    /// <summary>The answer where the house has no key yet.</summary>
    public static Answer None(string folder, Exit exit = Exit.BadInput) =>
        Answer.Refused([new(Place.Whole(folder), "this house has no key yet", "name the folder with --data, or open the bench once: the first key is made then", "paper-key-missing")], exit);

    /// <summary>The house's name as its ledger has it; null where there is none.</summary>
    public static async Task<string?> HouseAsync(string folder, CancellationToken cancel)
    {
        var path = DataFolder.LedgerIn(folder);
        if (!File.Exists(path))
            return null;
        using var ledger = new Ledger(path, TimeProvider.System);
        return (await ledger.HouseAsync(cancel)).Settings.ShopName;
    }

    /// <summary>Hands the list of the house as of now to what writes it into a new file; refused where the house has no key yet.</summary>
    public static async Task<Answer> WithListAsync(ParseResult given, Argument<string> file, Option<string?> data, Func<string, byte[], Task<Answer>> write, CancellationToken cancel)
    {
        var (path, folder) = (Path.GetFullPath(given.GetValue(file)!), DataFolder.Find(given.GetValue(data)));
        var ring = In(folder);
        return ring.List() is null ? None(folder) : await write(path, ring.Fresh(await HouseAsync(folder, cancel)));
    }

    public static string State(ListedKey key) => key switch
    {
        { Revoked: { } revoked } => $"revoked {Day(revoked.On)}: {revoked.Why}",
        { Until: { } until } => $"signed until {Day(until)}; still proves what it signed",
        _ => "signs",
    };

    public static JsonObject Json(KeyList list) => new()
    {
        ["house"] = list.House,
        ["asOf"] = list.AsOf.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        ["signing"] = list.Signing?.Id.Hex,
        ["keys"] = new JsonArray([.. list.Keys.Select(k => new JsonObject
        {
            ["id"] = k.Id.Hex,
            ["from"] = Day(k.From),
            ["until"] = k.Until is { } until ? Day(until) : null,
            ["revoked"] = k.Revoked is { } r ? Day(r.On) : null,
            ["why"] = k.Revoked?.Why,
        })]),
        ["superseded"] = new JsonArray([.. list.Superseded.Select(s => new JsonObject { ["report"] = s.Number, ["by"] = s.By })]),
    };

    /// <summary>Writes a new file, for its owner alone if asked; null when done.</summary>
    public static async Task<Answer?> PutAsync(string file, byte[] bytes, bool secret, CancellationToken cancel)
    {
        if (File.Exists(file))
            return Answer.BadUse("FILE", $"{file} is there already, and nothing is overwritten", "name a file that does not exist yet");
        if (Path.GetDirectoryName(file) is { } folder && !Directory.Exists(folder))
            return Answer.BadUse("FILE", $"there is no folder {folder}", "make the folder, or name a file in one that is there");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (secret && !OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        await using var to = new FileStream(file, options);
        await to.WriteAsync(bytes, cancel);
        return null;
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
