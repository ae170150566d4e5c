using System.Security.Cryptography;
using System.Text;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>Gathers what happened, each at its time, and then writes it in the order of time.</summary>
internal sealed class Telling
{
    private readonly StoryClock clock = new();
    private readonly List<(DateTimeOffset At, Func<Task> Act)> happenings = [];
    private readonly DateTimeOffset today;

    public Telling(string path, DateTimeOffset now, IReadOnlyDictionary<string, ServiceModel> models)
    {
        Now = now;
        today = new(now.UtcDateTime.Date, TimeSpan.Zero);
        Models = models;
        Ledger = new(path, clock);
    }

    public Ledger Ledger { get; }

    /// <summary>Nothing in the story happens later.</summary>
    public DateTimeOffset Now { get; }

    public DateOnly Today => DateOnly.FromDateTime(today.UtcDateTime);

    public IReadOnlyDictionary<string, ServiceModel> Models { get; }

    public SubmitToken FirstToken => Token("house 0");

    public SubmitToken LastToken => Token("the end");

    /// <summary>An instant so many days back, at an hour and minute.</summary>
    public DateTimeOffset At(int daysBack, int hour, int minute) => today.AddDays(-daysBack).AddHours(hour).AddMinutes(minute);

    public void Happens(DateTimeOffset at, Func<Task> act) => happenings.Add((at < Now ? at : Now, act));

    /// <summary>The same name gives the same token, so that a telling that was cut off can be told again.</summary>
    public static SubmitToken Token(string name) => new(new(SHA256.HashData(Encoding.UTF8.GetBytes("saltmarsh " + name)).AsSpan(0, 16)));

    public void Registers(string name, DateTimeOffset at, params HouseEvent[] events) =>
        Happens(at, async () => Written(await Ledger.AppendOnceAsync(Token(name), SaltmarshHouse.Lead, events), name));

    /// <summary>Writes everything in the order of time; what is told at the same instant in the order told.</summary>
    public async Task RunAsync()
    {
        foreach (var (at, act) in happenings.OrderBy(h => h.At))
        {
            clock.Now = at;
            await act();
        }

        clock.Now = Now;
        Written(await Ledger.AppendOnceAsync(LastToken, SaltmarshHouse.Lead, SaltmarshRegisters.LastRegistration), "the end");
    }

    public static Appended.Written Written(Appended answer, string name) => answer switch
    {
        Appended.Written written => written,
        Appended.Refused refused => throw new InvalidOperationException($"The story cannot go on at '{name}': {refused.What}"),
        _ => throw new InvalidOperationException($"Somebody else writes while '{name}' is told."),
    };
}
