using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Store;

/// <summary>What reading and writing share: the prepared database, the witness, the gate that writers of this process pass one by one.</summary>
internal sealed class LedgerSession(ILedgerStore store, Witness witness, TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim preparing = new(1, 1);
    private volatile bool prepared;
    private HouseState house = HouseState.Empty;

    public SemaphoreSlim Writing { get; } = new(1, 1);

    public ILedgerStore Store { get; } = store;

    public Witness Witness { get; } = witness;

    public TimeProvider Clock { get; } = clock;

    public Task<T> ReadAsync<T>(Func<LedgerDb, Task<T>> read, CancellationToken stop) => DoAsync(async () =>
    {
        await using var db = Store.Open();
        return await read(db);
    }, stop);

    /// <summary>Does the work on a prepared database and puts failures into words.</summary>
    public async Task<T> DoAsync<T>(Func<Task<T>> work, CancellationToken stop = default)
    {
        try
        {
            await PrepareAsync(stop);
            return await work();
        }
        catch (UnreadableEventException e)
        {
            throw Sqlite.SqliteFailures.Unreadable(Store.Name, e.Message, e);
        }
        catch (Exception e) when (e is not LedgerUnavailableException && Store.Explain(e) is not null)
        {
            throw Store.Explain(e)!;
        }
    }

    public void Dispose()
    {
        Store.Close();
        Writing.Dispose();
        preparing.Dispose();
    }

    /// <summary>The registers as they stand for this connection; only what is new since the last time is read.</summary>
    public async Task<HouseState> HouseAsync(LedgerDb db, CancellationToken stop)
    {
        var known = Volatile.Read(ref house);
        var news = await Streams.ReadAsync<HouseEvent>(db, Streams.House, known.Version, stop);
        if (news.Count == 0)
            return known;
        var now = news.Aggregate(known, (state, entry) => state.After(entry));
        Volatile.Write(ref house, now);
        return now;
    }

    private async Task PrepareAsync(CancellationToken stop)
    {
        if (prepared)
            return;
        await preparing.WaitAsync(stop);
        try
        {
            if (!prepared)
                await Store.PrepareAsync(stop);
            prepared = true;
        }
        finally
        {
            preparing.Release();
        }
    }
}
