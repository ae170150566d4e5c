using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Tests.Strokes;

/// <summary>Faults planted in recordings of the invented reference tool, and what is known to have happened there (same source as AgainstRecordings).</summary>
public sealed class PlantedFaults
{
    private static readonly StrokePlan Pause = new() { PausePascals = 420e5, SamplesPerSecond = 1000 };

    // low-fill, filling 60 %: trigger 0.2904 s, closed 6.7244 s.
    [Fact]
    public void A_poorly_filled_pump_is_slow() => Holds(t => t with { Filling = 0.6 }, s => s.AdvanceSeconds!.Value, 6.7244 - 0.2904, 0.02);

    // weak-drive, 16 V and 0.2 Ω: trigger 0.3591 s, closed 5.109 s.
    [Fact]
    public void A_weak_drive_is_slow() => Holds(t => t with { SupplyVolts = 16, ResistanceOhms = 0.2 }, s => s.AdvanceSeconds!.Value, 5.109 - 0.3591, 0.02);

    // air-in-oil, 4 %: closed after 4.1059 s against 4.0774 s healthy; net oil drawn 26.58 cm³ in all against 26.39.
    [Fact]
    public void Air_in_the_oil_costs_time_and_oil()
    {
        var airy = StrokeSimulator.Run(With(t => t with { Oil = t.Oil with { AirShare = 0.04 } }), Pause);
        Assert.InRange(airy.AdvanceSeconds!.Value / (4.4103 - 0.3044), 0.99, 1.01);
        Assert.True(airy.AdvanceSeconds > StrokeSimulator.Run(ReferenceTool.Healthy, Pause).AdvanceSeconds);
    }

    // oil-short, 22 cm³: the dies do not close, ram at 18.12 mm.
    [Fact]
    public void A_reservoir_short_of_oil_leaves_the_dies_open()
    {
        var simulated = StrokeSimulator.Run(With(t => t with { UsableOilCubicMetres = 22e-6 }), new StrokePlan { SamplesPerSecond = 100, GiveUpSeconds = 7 });
        Assert.Equal(StrokeEnd.GivenUp, simulated.End);
        Assert.Null(simulated.First(StrokeEventKind.DiesClosed));
        Assert.InRange(simulated.Samples[^1].Metres * 1e3, 18.0, 18.25);
        Assert.Equal(22, simulated.MostDrawnCubicMetres * 1e6, 3);
    }

    // bypass-leak 6e-15 m³/s per Pa: 429.2 bar 0.3 s into the pause, 130.2 bar at its end.
    [Fact]
    public void A_leak_past_the_ram_bleeds_the_pause_down() => Bleeds(t => t with { BypassLeak = 6e-15 }, 130.16 / 429.16);

    // both-checks-leaking, 3e-14 and 2e-14: 397.4 bar, then 41.0 bar.
    [Fact]
    public void Both_checks_leaking_bleed_it_down_together() => Bleeds(t => t with { DeliveryLeak = 3e-14, InletLeak = 2e-14 }, 41.04 / 397.41);

    // delivery-check-leaking 6e-14 with a tight inlet check: 451.0 bar, then 437.2 bar, as much as by cooling alone.
    [Fact]
    public void A_delivery_check_alone_holds_the_pause() => Bleeds(t => t with { DeliveryLeak = 6e-14 }, 437.24 / 450.95);

    // port-delivery-check-leaking 1e-14, nothing behind it: 413.2 bar, then 60.4 bar.
    [Fact]
    public void With_an_inlet_port_it_does_not() =>
        Bleeds(t => t with { Inlet = Ramwright.ServiceModels.Model.InletKind.Port, InletLeak = 0, DeliveryLeak = 1e-14 }, 60.36 / 413.24);

    // relief-set-low 590 bar: true peak 593.8 bar.
    [Fact]
    public void A_low_relief_opens_low() => Holds(t => t with { ReliefPascals = 590e5 }, s => s.PeakPascals / 1e5, 593.81, 0.008);

    // ram-binding, dry friction 1,800 N: the ram stays out at 20.04 mm under 88.9 bar.
    [Fact]
    public void A_ram_that_binds_stays_out()
    {
        var simulated = StrokeSimulator.Run(With(t => t with { DryFrictionNewtons = 1800 }), Pause);
        Assert.Equal(StrokeEnd.RamStaysOut, simulated.End);
        Assert.InRange(simulated.Samples[^1].Metres * 1e3, 19.9, 20.1);
    }

    // A relief seat that closes early: the ram stays out under what is left (a ratio of areas; invented).
    [Fact]
    public void A_relief_that_closes_early_leaves_the_ram_out() =>
        Assert.Equal(StrokeEnd.RamStaysOut, StrokeSimulator.Run(With(t => t with { ClosingRatio = 0.3 }), Pause).End);

    private static StrokeParameters With(Func<StrokeParameters, StrokeParameters> fault) => fault(ReferenceTool.Healthy);

    private static void Holds(Func<StrokeParameters, StrokeParameters> fault, Func<Stroke, double> figure, double known, double within) =>
        Assert.InRange(figure(StrokeSimulator.Run(With(fault), Pause)) / known, 1 - within, 1 + within);

    /// <summary>What is left at the end of the pause of what was there 0.3 s into it; cooling, left out here, takes up to some 3 %.</summary>
    private static void Bleeds(Func<StrokeParameters, StrokeParameters> fault, double known)
    {
        var simulated = StrokeSimulator.Run(With(fault), Pause);
        var released = simulated.First(StrokeEventKind.TriggerReleased)!.Seconds;
        double After(double seconds) => simulated.Samples.First(s => s.Seconds >= released + seconds).Pascals;
        Assert.InRange(After(4.999) / After(0.3) - known, -0.03, 0.08);
    }
}
