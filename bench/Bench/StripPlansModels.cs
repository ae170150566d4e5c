using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Bench;

/// <summary>Tools made up at random for growth: chains of parts side by side, some cross-links, some second ways; all invented.</summary>
internal static class StripPlansModels
{
    public static readonly Rates Rates = new() { LabourPerHour = new Money(78m, "EUR") };

    /// <param name="parts">How many parts, 6 or more.</param>
    /// <param name="width">How many chains side by side.</param>
    public static StripJob Job(int parts, int width, int targets, int seed)
    {
        var random = new Random(seed);
        ImmutableArray<Part> all = [.. Enumerable.Range(0, parts).Select(i => Part(i, width, random))];
        return new StripJob
        {
            Model = new ServiceModel
            {
                Tool = new ToolIdentity("grown", "Grown", null, ToolKind.Compression),
                Limits = new Limits
                {
                    Pressure = new PressureWindow(Pressure.FromBar(679), Pressure.FromBar(721)),
                    Nominal = Pressure.FromBar(700),
                    Maximum = Pressure.FromBar(735),
                    ProofRuns = 12,
                    Rest = TimeSpan.FromSeconds(40),
                },
                Parts = all,
                Fingerprint = new string('0', 64),
            },
            Rates = Rates,
            Targets = [.. all.TakeLast(width).Take(targets).Select(p => p.Id)],
        };
    }

    private static Part Part(int i, int width, Random random)
    {
        ImmutableArray<NodeId> own = i < width ? [] : [Id(i - width)];
        var ways = ImmutableArray.Create(Way(random, i >= width && random.NextDouble() < 0.3 ? own.Add(Id(random.Next(i - width, i))) : own, i));
        if (i >= 2 * width && random.NextDouble() < 0.25)
            ways = ways.Add(Way(random, [Id(random.Next(i - 2 * width, i))], i));
        return new Part
        {
            Id = Id(i),
            Name = Id(i).Value,
            Price = new Money(random.Next(50, 4000) / 100m, "EUR"),
            Renew = random.NextDouble() < 0.2 ? RenewalRule.WhenDisturbed : RenewalRule.OnCondition,
            WaysOff = ways,
        };
    }

    private static WayOff Way(Random random, ImmutableArray<NodeId> needs, int i) => new()
    {
        Needs = [.. needs.Distinct()],
        Time = TimeSpan.FromSeconds(random.Next(2, 60) * 6),
        Tool = random.NextDouble() < 0.8 ? new ToolId($"tool-{random.Next(8)}") : null,
        Posture = random.NextDouble() < 0.4 ? new PostureId($"posture-{random.Next(4)}") : null,
        Destroys = i > 0 && random.NextDouble() < 0.1 ? [Id(random.Next(i))] : [],
    };

    private static NodeId Id(int i) => new(string.Create(CultureInfo.InvariantCulture, $"part-{i:000}"));
}
