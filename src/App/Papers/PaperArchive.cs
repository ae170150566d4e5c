using System.Globalization;
using System.Security.Cryptography;
using Ramwright.App.Web.Pages;
using Ramwright.Paper.Signing;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Papers;

/// <summary>Keeps every paper that was issued as a file, and its SHA-256 in the ledger.</summary>
public sealed class PaperArchive(string folder, Ledger ledger)
{
    /// <summary>The keys of the house; they lie beside the papers' folder.</summary>
    public KeyRing Keys { get; } = new(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(folder))!, KeyRing.FolderName), ledger.Clock);

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
        await PutAsync(PathOf(number), pdf);
        var sha = Convert.ToHexStringLower(SHA256.HashData(pdf));
        return ActAnswer.Of(await ledger.AppendOnceAsync(sign.Token, sign.By, job, sign.Seen, new ReportIssued(kind, number, sha, head)));
    }

    /// <summary>The same for a signed proof report: its result and its DCC lie beside it, and what it takes the place of goes on the list of the house.</summary>
    public async Task<ActAnswer> IssueAsync(JobId job, Signature sign, string number, SignedReport report, string? replaces, LedgerHead head)
    {
        ArgumentNullException.ThrowIfNull(report);
        await PutAsync(Path.ChangeExtension(PathOf(number), ".json"), report.Result);
        await PutAsync(Path.ChangeExtension(PathOf(number), ".dcc.xml"), report.Dcc);
        var issued = await IssueAsync(job, sign, ReportKind.ProofReport, number, report.Pdf, head);
        if (issued is ActAnswer.Done && replaces is not null)
            Keys.Supersede(replaces, number);
        return issued;
    }

    private async Task PutAsync(string path, byte[] bytes)
    {
        Directory.CreateDirectory(folder);
        var written = path + ".new";
        await using (var file = new FileStream(written, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            await file.WriteAsync(bytes);
            file.Flush(flushToDisk: true);
        }

        File.Move(written, path, overwrite: true);
    }

    private string PathOf(string number) => number.All(c => char.IsAsciiLetterOrDigit(c) || c == '-')
        ? Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{number}.pdf"))
        : throw new ArgumentException($"'{number}' is no number of a paper.", nameof(number));
}
