using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Strokes;
using ReferenceTool = Ramwright.Hydraulics.Tests.Strokes.ReferenceTool;

namespace Ramwright.Hydraulics.Tests.Identification;

/// <summary>
/// Strokes of <see cref="RicherStroke"/>: each with a tool, leak laws (flow by pressure to the power 1, ¾ or ½), two-stage cooling, voids and noise of its own, none of which
/// the reading knows. Drawn from fixed seeds. The large run is in bench/.
/// </summary>
public sealed class RicherStrokes
{
    private static readonly Lazy<List<Drawn>> Strokes = new(() => [.. Enumerable.Range(0, 16).Select(k => new Drawn(7_000 + k))]);

    [Fact]
    public void Planted_faults_are_named_and_sound_ones_are_not()
    {
        Assert.Equal("", string.Join("; ", Strokes.Value.SelectMany(s => s.Missed.Select(f => $"{s.Seed} misses {f}").Concat(s.Wrong.Select(f => $"{s.Seed} names {f}")))));
        Assert.True(Strokes.Value.Sum(s => s.Planted.Count) >= 5);
    }

    [Fact]
    public void Limits_of_95_percent_hold_in_85_percent_or_more()
    {
        var told = Strokes.Value.SelectMany(s => s.Held).ToList();
        Assert.True(told.Count >= 100);
        Assert.InRange(told.Average(held => held ? 1.0 : 0), 0.85, 1);
    }

    [Fact]
    public void An_offset_and_a_finer_rate_change_nothing()
    {
        foreach (var plan in new[] { new RicherPlan { Seed = 1, OffsetBar = 9 }, new RicherPlan { Seed = 2, RowsPerSecond = 2000 } })
        {
            var told = Leaking(plan);
            Assert.Equal([FaultId.BypassLeaks], Named(told));
            Assert.InRange(told[ParameterName.BypassLeak].Value, 3.2e-15, 4.8e-15);
            Assert.InRange(700, told[ParameterName.ReliefOpening].Low, told[ParameterName.ReliefOpening].High);
        }
    }

    [Fact]
    public void Where_the_sensor_was_at_its_end_the_opening_is_not_told()
    {
        var told = Leaking(new RicherPlan { Seed = 4, ClippedBar = 650 });
        Assert.Equal([FaultId.BypassLeaks], Named(told));
        Assert.False(told[ParameterName.ReliefOpening].Identified);
        Assert.InRange(told[ParameterName.ReliefOpening].Low, 600, 660);
        Assert.Contains("sensor", told.NextRecording, StringComparison.Ordinal);
    }

    [Fact]
    public void At_500_rows_per_second_the_pause_still_tells_the_leak() =>
        Assert.InRange(Leaking(new RicherPlan { Seed = 3, RowsPerSecond = 500 })[ParameterName.HoldLeak].Value, 3.2e-15, 4.8e-15);

    [Fact]
    public void A_recording_of_nothing_is_answered()
    {
        var still = Enumerable.Range(0, 4000).Select(i => 0.001 * i).ToArray();
        var nothing = new Ramwright.Hydraulics.Recordings.Recording([.. still], [.. still.Select(_ => 0.0)], [.. still.Select(_ => 0.0)]);
        Assert.IsType<IdentificationAnswer.CannotTell>(StrokeIdentifier.Read(nothing, ReferenceTool.Healthy));
    }

    private static IdentificationAnswer.Told Leaking(RicherPlan plan) =>
        Assert.IsType<IdentificationAnswer.Told>(StrokeIdentifier.Read(RicherStroke.Record(ReferenceTool.Healthy with { BypassLeak = 4e-15 }, plan), ReferenceTool.Healthy));

    private static IEnumerable<string> Named(IdentificationAnswer.Told told) => told.Faults.Where(f => f.Probability >= IdentificationAnswer.Told.Named).Select(f => f.Id);

    [Fact]
    public void Another_tool_is_told_by_its_recording()
    {
        var other = ReferenceTool.Healthy with
        {
            RamSquareMetres = 1.45 * ReferenceTool.Healthy.RamSquareMetres,
            StrokeMetres = 0.026,
            DisplacementCubicMetres = 0.22e-6,
            SpringPreloadNewtons = 2600,
            FrameNewtonsPerMetre = 3.1e8,
            DeadCubicMetres = 9e-6,
        };
        var told = Assert.IsType<IdentificationAnswer.Told>(StrokeIdentifier.Read(RicherStroke.Record(other, new RicherPlan { Seed = 5 }), ReferenceTool.Healthy));
        Assert.True(told.Contradicts);
    }

    /// <summary>A stroke drawn from a seed, with what was planted and what was read.</summary>
    internal sealed class Drawn
    {
        private static readonly StrokeParameters Sound = ReferenceTool.Healthy;

        public Drawn(int seed)
        {
            Seed = seed;
            var random = new Random(seed);
            double Between(double low, double high) => low + (high - low) * random.NextDouble();
            double Times(double low, double high) => Math.Exp(Between(Math.Log(low), Math.Log(high)));
            var plan = new RicherPlan
            {
                Seed = seed,
                StartAngle = Between(0, 6.28),
                CoolingShare = Between(0.002, 0.008),
                CoolingSeconds = Times(0.6, 2.5),
                SlowCoolingSeconds = Times(4, 12),
                LeakPower = new[] { 1, 1, 1, 0.75, 0.5 }[random.Next(5)],
                VoidFirst = random.Next(3) == 0,
                PauseBar = Between(300, 500),
            };
            var tool = Sound with
            {
                Filling = Between(0.92, 0.98),
                DryFrictionNewtons = Between(80, 250),
                SealFrictionShare = Times(0.006, 0.018),
                ReliefPascals = Sound.ReliefPascals * Between(0.98, 1.02),
                SupplyVolts = Sound.SupplyVolts * Between(0.97, 1.02),
                ResistanceOhms = Sound.ResistanceOhms * Between(0.9, 1.15),
                BypassLeak = Sound.BypassLeak * Times(0.5, 2),
                Oil = Sound.Oil with { AirShare = Between(0.002, 0.007) },
                ReliefDelaySeconds = Sound.ReliefDelaySeconds * Times(0.7, 1.4),
                FrameNewtonsPerMetre = Sound.FrameNewtonsPerMetre * Between(0.98, 1.02),
                Inertia = Sound.Inertia * Between(0.95, 1.05),
            };
            (string Fault, Func<StrokeParameters, StrokeParameters> Plant)[] faults =
            [
                (FaultId.AirInOil, t => t with { Oil = t.Oil with { AirShare = Between(0.025, 0.06) } }),
                (FaultId.DeliveryCheckLeaks, t => t with { DeliveryLeak = Times(1.5e-14, 7e-14) }),
                (FaultId.InletCheckLeaks, t => t with { InletLeak = Times(1.5e-14, 5e-14) }),
                (FaultId.BypassLeaks, t => t with { BypassLeak = Times(8e-16, 8e-15) }),
                (FaultId.LowFill, t => t with { Filling = Between(0.5, 0.8) }),
                (FaultId.ReliefLow, t => t with { ReliefPascals = Sound.ReliefPascals * Between(0.8, 0.94) }),
                (FaultId.WeakDrive, t => t with { SupplyVolts = Sound.SupplyVolts * Between(0.85, 0.95), ResistanceOhms = Sound.ResistanceOhms * Between(2, 4.5) }),
                (FaultId.RamBinds, t => t with { DryFrictionNewtons = Between(900, 2200) }),
                (FaultId.ReliefSeatDamaged, t => t with { ClosingRatio = Between(0.1, 0.5) }),
            ];
            for (var count = random.Next(3); count > 0; count--)
            {
                var (fault, plant) = faults[random.Next(faults.Length)];
                tool = plant(tool);
                Planted.Add(fault);
            }

            var told = Assert.IsType<IdentificationAnswer.Told>(StrokeIdentifier.Read(RicherStroke.Record(tool, plan), Sound));
            var named = told.Faults.Where(f => f.Probability >= IdentificationAnswer.Told.Named).Select(f => f.Id).ToHashSet();
            (Missed, Wrong) = ([.. Planted.Except(named)], [.. named.Except(Planted)]);
            foreach (var (name, truth) in new[]
            {
                (ParameterName.PumpFill, tool.Filling), (ParameterName.EntrainedAir, tool.Oil.AirShare), (ParameterName.ReliefOpening, tool.ReliefPascals / 1e5),
                (ParameterName.ReliefClosing, tool.ClosingRatio * tool.ReliefPascals / 1e5), (ParameterName.SupplyVoltage, tool.SupplyVolts), (ParameterName.DriveResistance, tool.ResistanceOhms),
                (ParameterName.RamFriction, tool.DryFrictionNewtons), (ParameterName.BypassLeak, tool.BypassLeak), (ParameterName.DeliveryCheckLeak, tool.DeliveryLeak), (ParameterName.InletLeak, tool.InletLeak),
            })
            {
                if (told[name].Identified)
                    Held.Add(truth >= told[name].Low && truth <= told[name].High);
            }
        }

        public int Seed { get; }

        public HashSet<string> Planted { get; } = [];

        public List<string> Missed { get; }

        public List<string> Wrong { get; }

        /// <summary>For every figure that was told: whether its limits hold.</summary>
        public List<bool> Held { get; } = [];
    }
}
