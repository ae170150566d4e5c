using System.Text;
using Ramwright.Paper.Signing;

namespace Ramwright.Paper.Tests.Signing;

/// <summary>The life of a house's keys, on the disk.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class KeyRingTests : IDisposable
{
    private static readonly byte[] Message = "a paper"u8.ToArray();
    private readonly Folder _folder = new();

    private KeyRing Ring => new(Path.Combine(_folder.Path, "keys"), TimeProvider.System);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_first_key_is_made_once_and_only_its_owner_may_read_it()
    {
        using var first = Ring.Open("Saltmarsh");
        using var again = Ring.Open("Saltmarsh");
        Assert.Equal(first.Id, again.Id);
        Assert.Equal(first.Id, Ring.List()!.Signing!.Id);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(KeyFile()));
        Assert.DoesNotContain("PRIVATE", Encoding.UTF8.GetString(Ring.ListBytes()!), StringComparison.Ordinal);
    }

    // The name is what OpenSSL and sha256sum make of the public key.
    [Fact]
    public void OpenSSL_gives_the_key_the_same_name()
    {
        using var key = Ring.Open("Saltmarsh");
        var der = Path.Combine(_folder.Path, "public.der");
        Run.Tool("openssl", [], "pkey", "-in", KeyFile(), "-pubout", "-outform", "DER", "-out", der);
        Assert.StartsWith(key.Id.Hex, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(der))), StringComparison.Ordinal);
    }

    [Fact]
    public void After_rotation_a_new_key_signs_and_the_old_one_still_proves()
    {
        using var old = Ring.Open("Saltmarsh");
        var signature = old.Sign(Message);
        var list = Ring.Rotate();
        using var next = Ring.Open("Saltmarsh");
        Assert.NotEqual(old.Id, next.Id);
        Assert.Equal(next.Id, list.Signing!.Id);
        Assert.True(list.Find(old.Id.Hex)!.Signed(Message, signature));
        Assert.NotNull(list.Find(old.Id.Hex)!.Until);
        Assert.Single(Directory.GetFiles(Ring.ListPath[..^"list.json".Length], "*.pem")); // the old secret is gone
    }

    [Fact]
    public void The_key_that_signs_can_be_revoked_and_another_takes_over()
    {
        using var old = Ring.Open("Saltmarsh");
        var list = Ring.Revoke(old.Id, "the laptop was stolen")!;
        Assert.Equal("the laptop was stolen", list.Find(old.Id.Hex)!.Revoked!.Why);
        Assert.NotEqual(old.Id, list.Signing!.Id);
        Assert.True(KeyId.TryRead("0123456789abcdef", out var nobody));
        Assert.Null(Ring.Revoke(nobody, "none"));
        Assert.Equal(list.Keys.Select(k => k.Id), Ring.List()!.Keys.Select(k => k.Id));
    }

    [Fact]
    public void A_changed_list_is_said_to_be_damaged()
    {
        Ring.Open("Saltmarsh").Dispose();
        Ring.Supersede("SM-1-P1", "SM-1-P2");
        Ring.Supersede("SM-1-P1", "SM-1-P3");
        Assert.Equal("SM-1-P2", Assert.Single(Ring.List()!.Superseded).By);
        File.WriteAllText(Ring.ListPath, File.ReadAllText(Ring.ListPath).Replace("SM-1-P2", "SM-1-P9", StringComparison.Ordinal));
        Assert.Equal("paper-list-damaged", Assert.Throws<KeyRingException>(() => Ring.List()).Code);
        File.WriteAllText(Ring.ListPath, "{");
        Assert.Equal("paper-list-damaged", Assert.Throws<KeyRingException>(() => Ring.Open("Saltmarsh")).Code);
    }

    [Fact]
    public void A_key_that_is_gone_open_to_others_or_cut_short_signs_nothing()
    {
        Ring.Open("Saltmarsh").Dispose();
        var backup = Ring.Backup();
        File.SetUnixFileMode(KeyFile(), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
        Assert.Equal("paper-key-open", Code());
        File.SetUnixFileMode(KeyFile(), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.WriteAllText(KeyFile(), File.ReadAllText(KeyFile())[..120]);
        Assert.Equal("paper-key-unreadable", Code());
        File.Delete(KeyFile());
        Assert.Equal("paper-key-missing", Code());

        Assert.Equal("paper-keys-exist", Assert.Throws<KeyRingException>(() => Ring.Restore(backup)).Code);
        Directory.Delete(Path.GetDirectoryName(Ring.ListPath)!, recursive: true);
        Assert.Equal("paper-key-unreadable", Assert.Throws<KeyRingException>(() => Ring.Restore("no backup")).Code);
        var restored = Ring.Restore(backup);
        using var key = Ring.Open("Saltmarsh");
        Assert.Equal(restored.Signing!.Id, key.Id);

        string Code() => Assert.Throws<KeyRingException>(() => Ring.Open("Saltmarsh")).Code;
    }

    private string KeyFile() => Directory.GetFiles(Path.GetDirectoryName(Ring.ListPath)!, "*.pem").Single();
}
