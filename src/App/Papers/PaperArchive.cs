using System.Globalization;
using System.Security.Cryptography;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Papers;

/// <summary>Keeps every paper that was issued as a file, and its SHA-256 in the ledger.</summary>
public sealed class PaperArchive(string folder, Ledger ledger)
{
    /// <summary>Where a paper of that number lies; null when it is not there.</summary>
    public string? Find(string number)
    {
        var path = PathOf(number);
        return File.Exists(path) ? path : null;
    }

    /// <summary>Writes the file whole or not at all, then records it. The same token issues it once.</summary>
    /// <param name="head">The ledger head printed on it.</param>
    public async Task<ActAnswer> IssueAsync(JobId job, Signature sign, ReportKind kind, string number, byte[] pdf, LedgerHead head)
    {
        ArgumentNullException.ThrowIfNull(pdf);
        ArgumentNullException.ThrowIfNull(sign);
        Directory.CreateDirectory(folder);
        var path = PathOf(number);
        var written = path + ".new";
        await using (var file = new FileStream(written, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            await file.WriteAsync(pdf);
            file.Flush(flushToDisk: true);
        }

        File.Move(written, path, overwrite: true);
        var sha = Convert.ToHexStringLower(SHA256.HashData(pdf));
        return ActAnswer.Of(await ledger.AppendOnceAsync(sign.Token, sign.By, job, sign.Seen, new ReportIssued(kind, number, sha, head)));
    }

    private string PathOf(string number) => number.All(c => char.IsAsciiLetterOrDigit(c) || c == '-')
        ? Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{number}.pdf"))
        : throw new ArgumentException($"'{number}' is no number of a paper.", nameof(number));
}
