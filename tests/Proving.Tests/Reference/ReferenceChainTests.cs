using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;

namespace Ramwright.Proving.Tests.Reference;

public sealed class ReferenceChainTests
{
    private static readonly PressureWindow Window = new(Pressure.FromBar(679), Pressure.FromBar(721));

    // EA-4/02 M (2013), Supplement 1, S2: standard 45 mg (k = 2), drift ± 15 mg, comparison s 25 mg over three, comparator ± 10 mg, buoyancy ± 10 mg
    // give u = 29.3 mg and U = 59 mg. The same figures with bar for mg: the arithmetic knows no unit.
    [Fact]
    public void Contributions_add_as_in_the_published_budget()
    {
        var budget = Fit(new DeviceBudget
        {
            Kind = ReferenceKind.PortGauge,
            Reading =
            [
                new("calibration", new Spread.Expanded(45e5, 2), Effect.Systematic),
                new("drift", new Spread.Rectangular(15e5), Effect.Systematic),
                new("comparison", new Spread.Normal(25e5 / Math.Sqrt(3)), Effect.Systematic),
                new("resolution", new Spread.Rectangular(10e5), Effect.Systematic),
            ],
            Warming = new(1e5, 10),
        });
        Assert.Equal(29.3, budget.SystematicStandard.Bar, 0.05);
        Assert.Equal(59, budget.Systematic.AboveLimit.Bar, 0.5);
        Assert.Equal(58.5235, budget.Systematic.BelowLimit.Bar, 0.0001);
        Assert.Equal("calibration", budget.Lines[0].What);
        Assert.Equal(2, budget.Factor);
        Assert.Null(budget.DegreesOfFreedom);
    }

    // Student's t at 95.45 %: 2.28 for 10 degrees of freedom (JCGM 100:2008, Table G.2).
    [Fact]
    public void Few_degrees_of_freedom_widen_the_factor()
    {
        var budget = Fit(new DeviceBudget { Kind = ReferenceKind.PortGauge, Reading = [new("calibration line", new Spread.Normal(1e5), Effect.Systematic, 10)] });
        Assert.Equal(2.28, budget.Factor, 0.005);
        Assert.Equal(2.28, budget.Systematic.BelowLimit.Bar, 0.005);
    }

    [Fact]
    public void What_is_new_in_each_run_moves_no_limit()
    {
        var budget = Fit(new DeviceBudget { Kind = ReferenceKind.PortGauge, Reading = [new("repeats", new Spread.Normal(2e5), Effect.Random), new("calibration", new Spread.Expanded(3e5, 2), Effect.Systematic)] });
        Assert.Equal((3.0, 4.0), (budget.Systematic.BelowLimit.Bar, budget.Systematic.RandomExpanded.Bar));
    }

    // By hand: at 9,000 bar/s one millisecond is 9 bar; half a millisecond of lag and a tenth between samples are 5.4 bar
    [Fact]
    public void A_missed_peak_moves_the_upper_side_alone()
    {
        var budget = Fit(Gauge(TimeSpan.FromMilliseconds(0.5), TimeSpan.FromMilliseconds(0.1)));
        Assert.Equal(5.4, budget.Capture.Bar, 1e-9);
        Assert.Equal(3, budget.Systematic.BelowLimit.Bar, 1e-9);
        Assert.Equal(8.4, budget.Systematic.AboveLimit.Bar, 1e-9);
        Assert.Equal("5.4 bar, upward alone, added whole: 9,000 bar/s × 0.6 ms", BudgetText.Capture(budget, UnitSystem.Metric));
    }

    // 10.5 bar is a quarter of the window; at 9,000 bar/s it passes in 1.1667 ms.
    [Fact]
    public void A_device_too_slow_for_the_tool_is_refused_with_the_figure_and_what_would_do()
    {
        var slow = Assert.IsType<DeviceAnswer.DeviceTooSlow>(ReferenceChain.Examine(Gauge(TimeSpan.FromMilliseconds(4), TimeSpan.FromMilliseconds(1)), Window, 9_000e5));
        Assert.Equal(45, slow.Capture.Bar, 1e-9);
        Assert.Equal(10.5, slow.LargestAllowed.Bar, 1e-9);
        Assert.Equal(1.1667, slow.WouldDo.TotalMilliseconds, 0.0001);
    }

    // By hand: ram 39.3 mm, area 1,213.0 mm²; 83.3 kN + 1.45 kN spring + 0.15 kN friction over it is 69.99 MPa = 699.9 bar.
    // Sensitivities: 1/A = 824.4 Pa/N; 2p/d = 2 x 700 bar / 39.3 mm = 35.62 bar/mm; temperature 6 N/K x 1/A = 0.0495 bar/K.
    [Fact]
    public void A_force_becomes_the_pressure_that_drives_ram_spring_and_friction()
    {
        var conversion = Ram();
        Assert.Equal(699.9, conversion.Equivalent(Force.FromKilonewtons(83.3)).Bar, 0.05);
        Assert.Equal(83.3, conversion.Behind(conversion.Equivalent(Force.FromKilonewtons(83.3))).Kilonewtons, 1e-9);
        var budget = Fit(new DeviceBudget { Kind = ReferenceKind.ForceCell, Force = conversion, Reading = [new("calibration", new Spread.Expanded(340, 2), Effect.Systematic)], Warming = new(6, 10) });
        Assert.Equal(["calibration", "friction", "ram diameter", "return spring", "temperature"], budget.Lines.Select(l => l.What).Order(StringComparer.Ordinal));
        Assert.Equal(824.4, Line("calibration").Sensitivity, 0.05);
        Assert.Equal(35.62, Math.Abs(Line("ram diameter").Sensitivity) * 1e-3 / 1e5, 0.005);
        Assert.Equal(0.0495, Line("temperature").Sensitivity / 1e5, 0.00005);
        Assert.Equal(340 / 2 * 824.4 / 1e5, Line("calibration").Standard.Bar, 0.0005);
        var row = BudgetText.Rows(budget, UnitSystem.Metric).Single(r => r.What == "ram diameter");
        Assert.Equal(("± 0.02 mm", "rectangular", "√3", "−35.6 bar/mm"), (row.Given, row.Shape, row.Divisor, row.Sensitivity));

        BudgetLine Line(string what) => budget.Lines.Single(l => l.What == what);
    }

    // By hand: halves of the differences 160, 150, 170, 160 N; mean 160 N, s = 8.165 N, over the root of four 4.082 N.
    [Fact]
    public void Loading_up_and_down_shows_the_friction()
    {
        var shown = Assert.IsType<FrictionLoop.Shown>(FrictionLoop.Of([Pair(61_000, 320), Pair(61_100, 300), Pair(61_050, 340), Pair(61_020, 320)]));
        Assert.Equal(160, shown.Friction.Newtons, 1e-9);
        Assert.Equal(4.082, shown.Standard.Newtons, 0.0005);
        var line = Fit(new DeviceBudget { Kind = ReferenceKind.ForceCell, Force = Ram().With(shown), Reading = [] }).Lines.Single(l => l.What == "friction, by loading up and down");
        Assert.Equal(3, line.DegreesOfFreedom);
        Assert.Equal(2, Assert.IsType<FrictionLoop.TooFew>(FrictionLoop.Of([Pair(1, 1), Pair(1, 1)])).Loops);
        Assert.Equal(3, Assert.IsType<FrictionLoop.NotAgainstMotion>(FrictionLoop.Of([Pair(1, 1), Pair(1, 1), Pair(1, 0)])).Loop);
    }

    [Fact]
    public void A_memory_nobody_compared_shows_nothing()
    {
        var memory = Gauge(TimeSpan.Zero, TimeSpan.Zero) with { Kind = ReferenceKind.ToolMemory };
        Assert.IsType<DeviceAnswer.NotCompared>(ReferenceChain.Examine(memory, Window, 0));
        Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(memory with { ComparedAtThisVisit = true }, Window, 0));
    }

    private static ForcePair Pair(double up, double more) => new(Force.FromNewtons(up), Force.FromNewtons(up + more));

    private static ForceConversion Ram() => new(Length.FromMillimetres(39.3), Length.FromMillimetres(0.02), Force.FromNewtons(1_450), Force.FromNewtons(60), Force.FromNewtons(150), Force.FromNewtons(150));

    private static ReferenceBudget Fit(DeviceBudget device) => Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(device, Window, 9_000e5)).Budget;

    private static DeviceBudget Gauge(TimeSpan lag, TimeSpan sampling) => new()
    {
        Kind = ReferenceKind.PortGauge,
        Reading = [new("calibration", new Spread.Expanded(3e5, 2), Effect.Systematic)],
        TimeConstant = lag,
        SamplingInterval = sampling,
    };
}
