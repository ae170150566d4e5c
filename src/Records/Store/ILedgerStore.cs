namespace Ramwright.Records.Store;

/// <summary>What a database provider does for the ledger.</summary>
internal interface ILedgerStore
{
    /// <summary>The file or server, for messages.</summary>
    string Name { get; }

    /// <summary>Makes the database or brings it to this program's schema; refuses a later schema. Called once before the first use.</summary>
    /// <exception cref="LedgerUnavailableException">The database is of a later program.</exception>
    Task PrepareAsync(CancellationToken stop);

    /// <summary>A context of its own for one piece of work.</summary>
    LedgerDb Open();

    /// <summary>What a failure of the database means to the person; null when the exception is none of the database's.</summary>
    LedgerUnavailableException? Explain(Exception failure);

    /// <summary>Lets go of the database.</summary>
    void Close();
}
