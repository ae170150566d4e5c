using Microsoft.EntityFrameworkCore;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Store;

/// <summary>Adds entries: token first, then what stands, then the rules, then all rows in one transaction, then the witness.</summary>
internal sealed class LedgerWriter(LedgerSession session)
{
    /// <summary>Most events in one submission, and most characters in one event.</summary>
    private const int MostEvents = 200, MostCharacters = 2_000_000;

    public Task<Appended> OpenJobAsync(SubmitToken token, PersonId by, IReadOnlyList<JobEvent> events) => WriteOnceAsync(token, events, async db =>
    {
        var house = await session.HouseAsync(db, default);
        var last = await db.Jobs.MaxAsync(j => (int?)j.Number) ?? 0;
        var job = JobId.Of(house.Settings.JobLetters, Math.Max(last + 1, house.Settings.FirstJobNumber));
        return await AddAsync(db, token, by, house, new JobState { Id = job }, events);
    });

    public Task<Appended> AppendAsync(SubmitToken token, PersonId by, JobId job, EntryNumber? seen, IReadOnlyList<JobEvent> events) => WriteOnceAsync(token, events, async db =>
    {
        var entries = await Streams.ReadAsync<JobEvent>(db, Streams.Of(job), EntryNumber.None, default);
        if (entries.Count == 0)
            return (new Appended.Refused("no-such-job", $"There is no job {job}.", "Look the number up on the rack."), []);
        if (seen is { } version && version != entries[^1].Number)
            return (new Appended.Conflict([.. entries.Where(e => e.Number > version)]), []);
        return await AddAsync(db, token, by, await session.HouseAsync(db, default), JobState.Fold(job, entries), events);
    });

    public Task<Appended> AppendAsync(SubmitToken token, PersonId by, IReadOnlyList<HouseEvent> events) => WriteOnceAsync(token, events, async db =>
    {
        if (SignerRules.Refuse(await session.HouseAsync(db, default), by, events) is { } refused)
            return (refused, []);
        var rows = new Rows(await Streams.HeadAsync(db, default), token, by, session.Clock);
        foreach (var what in events)
        {
            var row = rows.Add(Streams.Of(what), what);
            if (what is ToolRegistered tool)
                await Projections.WriteAsync(db, tool, row.Number);
        }

        return (rows.Written(null), rows.All);
    });

    public async Task<int> RebuildTablesAsync(CancellationToken stop)
    {
        await session.Writing.WaitAsync(stop);
        try
        {
            await using var db = session.Store.Open();
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            var jobs = await Projections.RebuildAsync(db, stop);
            await transaction.CommitAsync(stop);
            return jobs;
        }
        finally
        {
            session.Writing.Release();
        }
    }

    private async Task<(Appended, List<EntryRow>)> AddAsync(LedgerDb db, SubmitToken token, PersonId by, HouseState house, JobState job, IReadOnlyList<JobEvent> events)
    {
        if (SignerRules.Refuse(house, by, events) is { } unknown)
            return (unknown, []);
        var rows = new Rows(await Streams.HeadAsync(db, default), token, by, session.Clock);
        foreach (var what in events)
        {
            if (JobRules.Refuse(job, what) is { } refused)
                return (refused, []);
            var row = rows.Add(Streams.Of(job.Id), what);
            job = job.After(new(new(row.Number), UtcText.Read(row.At), by, what));
        }

        await Projections.WriteAsync(db, job);
        return (rows.Written(job.Id), rows.All);
    }

    private async Task<Appended> WriteOnceAsync<T>(SubmitToken token, IReadOnlyList<T> events, Func<LedgerDb, Task<(Appended Answer, List<EntryRow> Rows)>> write)
    {
        if (token.Value == Guid.Empty)
            throw new ArgumentException("A submission needs a token of its own.", nameof(token));
        ArgumentOutOfRangeException.ThrowIfZero(events.Count, nameof(events));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(events.Count, MostEvents, nameof(events));

        await session.Writing.WaitAsync();
        try
        {
            await using var db = session.Store.Open();
            await using var transaction = await db.Database.BeginTransactionAsync(); // takes SQLite's write lock at once
            if (await FirstResultAsync(db, token) is { } first)
                return Witnessed(first);
            var (answer, rows) = await write(db);
            if (answer is not Appended.Written)
                return answer;
            if (rows.Find(r => r.Body.Length > MostCharacters) is { } long_)
                return new Appended.Refused("too-long", $"What was entered for {long_.Kind} is longer than {MostCharacters:N0} characters.", "Shorten it.");
            db.Entries.AddRange(rows);
            await db.SaveChangesAsync();
            await transaction.CommitAsync();
            return Witnessed(answer);
        }
        finally
        {
            session.Writing.Release();
        }
    }

    private Appended Witnessed(Appended answer)
    {
        session.Witness.See(((Appended.Written)answer).Head);
        return answer;
    }

    /// <summary>What the token wrote when it came first; null when it never came.</summary>
    public static async Task<Appended.Written?> FirstResultAsync(LedgerDb db, SubmitToken token)
    {
        var text = token.ToString();
        var rows = await db.Entries.AsNoTracking().Where(e => e.Token == text).OrderBy(e => e.Place)
            .Select(e => new { e.Number, e.Stream, e.Hash }).ToListAsync();
        if (rows.Count == 0)
            return null;
        return new Appended.Written(Streams.JobOf(rows[0].Stream), [.. rows.Select(r => new EntryNumber(r.Number))], new(new(rows[^1].Number), rows[^1].Hash), Repeated: true);
    }

    /// <summary>The rows of one submission, each chained to the one before.</summary>
    private sealed class Rows(LedgerHead head, SubmitToken token, PersonId by, TimeProvider clock)
    {
        private readonly string at = UtcText.Write(clock.GetUtcNow());
        private LedgerHead last = head;

        public List<EntryRow> All { get; } = [];

        public EntryRow Add<T>(string stream, T what)
            where T : class
        {
            var row = new EntryRow
            {
                Number = last.Number.Value + 1,
                Stream = stream,
                Kind = EventNames.Of(what.GetType()),
                At = at,
                By = by.Value,
                Token = token.ToString(),
                Place = All.Count,
                Body = WireJson.Write(what),
                PreviousHash = last.Hash,
            };
            row.Hash = Chain.HashOf(row);
            last = new(new(row.Number), row.Hash);
            All.Add(row);
            return row;
        }

        public Appended.Written Written(JobId? job) => new(job, [.. All.Select(r => new EntryNumber(r.Number))], last, Repeated: false);
    }
}
