using System.Collections.Immutable;
using CsCheck;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests.Strip;

/// <summary>Small jobs at random: several ways, tools, postures, states, what is destroyed or disturbed, risk, work begun.</summary>
internal static class RandomJobs
{
    private static readonly ToolId[] Tools = [new("a"), new("b"), new("c")];
    private static readonly PostureId[] Postures = [new("up"), new("flat")];

    public static Gen<StripJob> WithNodes(int least, int most, bool begun = true) =>
        Gen.Select(Gen.Int[least, most], Gen.UInt).Select((count, seed) => Job(count, new Random(unchecked((int)seed)), begun));

    /// <summary>Two or three ways for each part, every way with a tool and a posture, everything a target: choosing and ordering at their hardest.</summary>
    public static Gen<StripJob> Choosy(int least, int most) => WithNodes(least, most).Select(Gen.UInt, (job, seed) => Choosy(job, new Random(unchecked((int)seed))));

    /// <summary>A job in a few lines, for a failing case.</summary>
    public static string Print(StripJob job) => string.Join('\n',
        job.Model.States.Select(s => $"{s.Id} isolates {s.Isolates}: {string.Join(' ', s.Reach?.Needs ?? [])} {s.Reach?.Time} {s.Reach?.Tool} {s.Reach?.Posture}")
            .Concat(job.Model.Parts.SelectMany(p => p.WaysOff.Select(w =>
                $"{p.Id} {p.Count} x {p.Price} {p.Renew}: [{string.Join(' ', w.Needs)}] {w.Time} {w.Tool} {w.Posture} destroys [{string.Join(' ', w.Destroys)}] disturbs [{string.Join(' ', w.Disturbs)}] risk {w.Risk?.Chance}")))
            .Append($"targets {string.Join(' ', job.Targets)}; done {string.Join(' ', job.Done)}; owed {string.Join(' ', job.RenewalsOwed)}; {job.ToolInHand} {job.Posture}"));

    private static StripJob Job(int count, Random random, bool begun)
    {
        var ids = Enumerable.Range(0, count).Select(i => new NodeId($"n{i}")).ToArray();
        var statesCount = random.Next(0, 2);
        var model = Models.Of(
            [.. ids.Take(statesCount).Select(id => State(id, ids, random))],
            [.. ids.Skip(statesCount).Select(id => Part(id, ids, random))]) with
        {
            Tools = [.. Tools.Where(_ => random.Next(2) == 0).Select(t => new ShopTool.Bought { Id = t, Name = t.Value, Change = Minutes(random, 3) })],
            Postures = [.. Postures.Where(_ => random.Next(2) == 0).Select(p => new Posture(p, p.Value) { Change = Minutes(random, 3) })],
        };
        return new StripJob
        {
            Model = model,
            Rates = Models.Rates,
            Targets = [.. Some(ids, random, 0.25).Append(ids[random.Next(count)]).Distinct()],
            Done = begun && random.Next(3) == 0 ? [.. Some(ids, random, 0.3)] : [],
            RenewalsOwed = begun && random.Next(3) == 0 ? [.. Some(ids, random, 0.3)] : [],
            ToolInHand = begun && random.Next(3) == 0 ? Tools[random.Next(Tools.Length)] : null,
            Posture = begun && random.Next(3) == 0 ? Postures[random.Next(Postures.Length)] : null,
        };
    }

    private static StripJob Choosy(StripJob job, Random random)
    {
        WayOff Held(WayOff way) => way with { Tool = Tools[random.Next(Tools.Length)], Posture = Postures[random.Next(Postures.Length)] };
        ImmutableArray<Part> parts =
        [
            .. job.Model.Parts.Select((part, i) => part with
            {
                WaysOff = [.. Enumerable.Range(0, random.Next(2, 4)).Select(_ => Held(Way(part.Id, [.. job.Model.Parts.Take(i + 1).Select(p => p.Id)], random)))],
            }),
        ];
        return job with { Model = job.Model with { Parts = parts }, Targets = [.. parts.Select(p => p.Id)] };
    }

    private static State State(NodeId id, NodeId[] ids, Random random) => new()
    {
        Id = id,
        Name = id.Value,
        Isolates = random.Next(3) == 0,
        Reach = random.Next(8) == 0 ? null : new Operation
        {
            Text = "reach it",
            Needs = Needs(id, ids, random),
            Time = Minutes(random, 4),
            Tool = Pick(Tools, random),
            Posture = Pick(Postures, random),
        },
    };

    private static Part Part(NodeId id, NodeId[] ids, Random random) => new()
    {
        Id = id,
        Name = id.Value,
        Count = random.Next(1, 3),
        Price = random.Next(3) == 0 ? null : new Money(random.Next(0, 900) / 100m, "EUR"),
        Renew = (RenewalRule)random.Next(4),
        WaysOff = [.. Enumerable.Range(0, random.Next(10) == 0 ? 0 : random.Next(1, 4)).Select(_ => Way(id, ids, random))],
    };

    private static WayOff Way(NodeId id, NodeId[] ids, Random random) => new()
    {
        Needs = Needs(id, ids, random),
        Time = Minutes(random, 5),
        Tool = Pick(Tools, random),
        Posture = Pick(Postures, random),
        Destroys = random.Next(4) == 0 ? [.. Some(ids, random, 0.25)] : [],
        Disturbs = random.Next(4) == 0 ? [.. Some(ids, random, 0.4)] : [],
        Risk = random.Next(5) == 0 ? new WayOffRisk(random.Next(1, 30) / 100.0, [.. Some(ids, random, 0.4)]) : null,
    };

    /// <summary>Mostly nodes of a lower number, so that most jobs can be done; now and then any, so that circles occur.</summary>
    private static ImmutableArray<NodeId> Needs(NodeId id, NodeId[] ids, Random random)
    {
        var own = Array.IndexOf(ids, id);
        return [.. ids.Where((other, i) => i != own && random.NextDouble() < (i < own ? 0.4 : 0.05))];
    }

    private static IEnumerable<NodeId> Some(NodeId[] ids, Random random, double share) => [.. ids.Where(_ => random.NextDouble() < share)];

    private static TimeSpan Minutes(Random random, int most) => TimeSpan.FromMinutes(random.Next(0, most * 10) / 10.0);

    private static T? Pick<T>(T[] all, Random random) where T : struct => random.Next(3) == 0 ? null : all[random.Next(all.Length)];
}
