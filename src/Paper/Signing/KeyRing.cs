using System.Text;

namespace Ramwright.Paper.Signing;

/// <summary>
/// The house's keys on the disk: one folder with the list that everybody may have and the one key that signs, a file that only its owner
/// may read. Files are written whole or not at all, and read anew each time, so a change by the command line is seen by an open bench.
/// </summary>
public sealed class KeyRing(string folder, TimeProvider clock)
{
    public const string FolderName = "paper-keys";
    private const string ListFile = "list.json";
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;
    private static readonly Lock OneAtATime = new();

    public string ListPath => Path.Combine(folder, ListFile);

    /// <summary>The list as a file; null when the house has no key yet.</summary>
    public byte[]? ListBytes() => File.Exists(ListPath) ? File.ReadAllBytes(ListPath) : null;

    /// <summary>The list; null when the house has no key yet.</summary>
    /// <exception cref="KeyRingException">The list is damaged.</exception>
    public KeyList? List() => ListBytes() is not { } bytes ? null : KeyListFile.Read(bytes) switch
    {
        KeyListRead.Got got => got.List,
        KeyListRead.Damaged damaged => throw new KeyRingException("paper-list-damaged", $"{ListPath}: {damaged.What}", "put it back from a backup: ramwright keys restore FILE"),
        _ => throw new InvalidOperationException("A list is got or damaged."),
    };

    /// <summary>The key that signs; the first one is made when the house has none yet.</summary>
    /// <param name="house">Name of the house, for a first key.</param>
    /// <exception cref="KeyRingException">The key is missing, damaged, open to others, or was revoked.</exception>
    public HouseKey Open(string house)
    {
        lock (OneAtATime)
            return List() is { } list ? Load(list) : Begin(house);
    }

    /// <summary>A new key signs from now on. The old one still proves what it signed; its secret is destroyed.</summary>
    public KeyList Rotate() => Change((list, today) =>
    {
        var next = HouseKey.Make(list.House, clock.GetUtcNow());
        var keys = list.Keys.Select(k => k.Until is null ? k with { Until = today } : k);
        return (list with { Keys = [.. keys, Listed(next, today)] }, next);
    });

    /// <summary>Papers under this key are no longer to be trusted. When it is the one that signs, a new one takes over.</summary>
    /// <returns>The new list, or null when no key has that name.</returns>
    public KeyList? Revoke(KeyId id, string why) => List()?.Find(id.Hex) is null ? null : Change((list, today) =>
    {
        var signs = list.Signing?.Id == id;
        var next = signs ? HouseKey.Make(list.House, clock.GetUtcNow()) : Load(list);
        var keys = list.Keys.Select(k => k.Id == id ? k with { Until = k.Until ?? today, Revoked = k.Revoked ?? new(today, why) } : k);
        return (list with { Keys = signs ? [.. keys, Listed(next, today)] : [.. keys] }, next);
    });

    /// <summary>Puts on the list that one report took the place of another; once.</summary>
    public void Supersede(string number, string by)
    {
        if (List()?.ReplacedBy(number) is null)
            Change((list, _) => (list with { Superseded = [.. list.Superseded, new(number, by)] }, Load(list)));
    }

    /// <summary>The list as of now, signed anew, to be handed out. Nothing is written.</summary>
    /// <param name="house">The house's name as it is today; null: as the list has it.</param>
    public byte[] Fresh(string? house)
    {
        lock (OneAtATime)
        {
            var list = List() ?? throw None();
            using var key = Load(list);
            return KeyListFile.Write(list with { AsOf = clock.GetUtcNow(), House = house ?? list.House }, key);
        }
    }

    /// <summary>List and secret key in one text. Secret: whoever has it can sign as the house.</summary>
    public string Backup()
    {
        var list = List() ?? throw None();
        using var key = Load(list);
        return Encoding.UTF8.GetString(ListBytes()!) + "\n" + key.ToPem();
    }

    /// <summary>Puts a backup into an empty place.</summary>
    /// <exception cref="KeyRingException">There are keys already, or the text is no whole backup.</exception>
    public KeyList Restore(string backup)
    {
        ArgumentNullException.ThrowIfNull(backup);
        lock (OneAtATime)
        {
            if (File.Exists(ListPath))
                throw new KeyRingException("paper-keys-exist", $"there are keys in {folder} already", "move that folder away first; nothing was overwritten");
            var end = backup.IndexOf("-----BEGIN", StringComparison.Ordinal);
            using var key = HouseKey.FromPem(backup);
            if (end < 0 || key is null || KeyListFile.Read(Encoding.UTF8.GetBytes(backup[..end])) is not KeyListRead.Got { List: var list } || list.Signing?.Id != key.Id)
                throw new KeyRingException("paper-key-unreadable", "this is no whole backup of keys", "name a file that 'ramwright keys backup' wrote");
            Write(list, key);
            return list;
        }
    }

    private static ListedKey Listed(HouseKey key, DateOnly from) => new(key.Id, [.. key.PublicKey], from);

    private static KeyRingException None() => new("paper-key-missing", "the house has no key yet", "open the bench once, or release a tool: the first key is made then");

    private string KeyPath(KeyId id) => Path.Combine(folder, id.Hex + ".pem");

    private HouseKey Begin(string house)
    {
        var now = clock.GetUtcNow();
        var key = HouseKey.Make(house, now);
        Write(new KeyList { House = house, AsOf = now, Keys = [Listed(key, DateOnly.FromDateTime(now.UtcDateTime))] }, key);
        return key;
    }

    private KeyList Change(Func<KeyList, DateOnly, (KeyList List, HouseKey Signer)> change)
    {
        lock (OneAtATime)
        {
            var now = clock.GetUtcNow();
            var old = List() ?? throw None();
            var (list, signer) = change(old, DateOnly.FromDateTime(now.UtcDateTime));
            using (signer)
                Write(list with { AsOf = now }, signer);
            foreach (var gone in list.Keys.Where(k => k.Until is not null && File.Exists(KeyPath(k.Id))))
                File.Delete(KeyPath(gone.Id));
            return list with { AsOf = now };
        }
    }

    private HouseKey Load(KeyList list)
    {
        if (list.Signing is not { } signing)
            throw new KeyRingException("paper-key-missing", "no key of the house signs any more", "put one back from a backup: ramwright keys restore FILE");
        var path = KeyPath(signing.Id);
        if (!File.Exists(path))
            throw new KeyRingException("paper-key-missing", $"the key {signing.Id} is not at {path}", "put it back from a backup: ramwright keys restore FILE");
        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & Others) != UnixFileMode.None)
            throw new KeyRingException("paper-key-open", $"others than its owner may read or write {path}", "if nobody did: chmod 600 on it. If somebody may have: ramwright keys revoke");
        if (HouseKey.FromPem(File.ReadAllText(path)) is not { } key || key.Id != signing.Id)
            throw new KeyRingException("paper-key-unreadable", $"{path} is not the key {signing.Id}", "put it back from a backup: ramwright keys restore FILE");
        return key;
    }

    /// <summary>First the secret, then the list: a list never names a signing key that is not there.</summary>
    private void Write(KeyList list, HouseKey signer)
    {
        Directory.CreateDirectory(folder);
        if (!File.Exists(KeyPath(signer.Id)))
            Put(KeyPath(signer.Id), Encoding.ASCII.GetBytes(signer.ToPem()), OwnerOnly);
        Put(ListPath, KeyListFile.Write(list, signer), OwnerOnly | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
    }

    private static void Put(string path, byte[] bytes, UnixFileMode mode)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = mode;
        var written = path + ".new";
        File.Delete(written);
        using (var file = new FileStream(written, options))
        {
            file.Write(bytes);
            file.Flush(flushToDisk: true);
        }

        File.Move(written, path, overwrite: true);
    }
}
