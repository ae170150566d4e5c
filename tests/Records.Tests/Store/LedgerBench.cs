using Microsoft.Data.Sqlite;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

/// <summary>A ledger in a folder of its own, with one person who may release; gone at the end of the test. All data invented.</summary>
internal sealed class LedgerBench : IDisposable
{
    public static readonly PersonId Ada = PersonId.Parse("ada-fenn");
    public static readonly PersonId Tom = PersonId.Parse("tom-sallow");

    private readonly string folder = Directory.CreateTempSubdirectory("ramwright-ledger-").FullName;

    public LedgerBench()
    {
        Path = System.IO.Path.Combine(folder, "ledger.db");
        Ledger = new(Path, Clock);
    }

    public string Path { get; }

    public string Witness => Path + ".witness";

    public HandClock Clock { get; } = HandClock.AtNoon();

    public Ledger Ledger { get; private set; }

    public static JobOpened Opening(string serial = "C85-20417") => new()
    {
        ModelId = "corrie-85",
        ModelFingerprint = new('a', 64),
        Tool = ToolSerial.Parse(serial),
        Customer = CustomerId.Parse("eelmarsh-lines"),
        Complaint = "drips at the cap",
        ConditionOnReceipt = "dirty, complete",
        Promised = new(2026, 3, 6),
    };

    public async Task<Appended.Written> RegisterAsync() => Assert.IsType<Appended.Written>(await Ledger.AppendOnceAsync(SubmitToken.New(), Ada,
        new PersonRegistered(Ada, "Ada Fenn", "workshop lead", MayAuthoriseRelease: true),
        new PersonRegistered(Tom, "Tom Sallow", "technician", MayAuthoriseRelease: false)));

    public async Task<JobId> OpenAsync(string serial = "C85-20417") =>
        Assert.IsType<Appended.Written>(await Ledger.OpenJobAsync(SubmitToken.New(), Ada, Opening(serial))).Job!.Value;

    public async Task<Appended.Written> NoteAsync(JobId job, string text) =>
        Assert.IsType<Appended.Written>(await Ledger.AppendOnceAsync(SubmitToken.New(), Ada, job, null, new NoteWritten(Station.Arrive, text)));

    /// <summary>The same file through a new door, as after a restart.</summary>
    public void Restart()
    {
        Ledger.Dispose();
        Ledger = new(Path, Clock);
    }

    /// <summary>Does to the file what a tamperer does, with the refusing triggers taken out first.</summary>
    public void Tamper(string sql)
    {
        Ledger.Dispose();
        using (var connection = new SqliteConnection($"Data Source={Path};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DROP TRIGGER IF EXISTS Entries_no_update; DROP TRIGGER IF EXISTS Entries_no_delete; " + sql;
            command.ExecuteNonQuery();
        }

        Ledger = new(Path, Clock);
    }

    public void Dispose()
    {
        Ledger.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}
