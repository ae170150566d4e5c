using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;

namespace Ramwright.Proving.Tests.Reference;

public sealed class ReferenceChainTests
{
    private static readonly PressureWindow Window = new(Pressure.FromBar(679), Pressure.FromBar(721));

    // EA-4/02 M (2013), Supplement 1, S2: standard 45 mg (k = 2), drift ± 15 mg, comparison s 25 mg over three, comparator ± 10 mg, buoyancy ± 10 mg
    // give u = 29.3 mg and U = 59 mg. The same figures with bar for mg: the arithmetic knows no unit.
    [Fact]
    public void Contributions_add_as_in_the_published_budget()
    {
        var budget = new DeviceBudget
        {
            Kind = ReferenceKind.PortGauge,
            CalibrationExpanded = Pressure.FromBar(45),
            DriftLimit = Pressure.FromBar(15),
            TemperatureLimit = Pressure.FromBar(10),
            Resolution = Pressure.FromBar(20),
            Further = [new("comparison", Pressure.FromBar(25 / Math.Sqrt(3)))],
        };
        var fit = Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(budget, Window, 0));
        Assert.Equal(59, fit.Systematic.AboveLimit.Bar, 0.5);
        Assert.Equal(58.5235, fit.Systematic.BelowLimit.Bar, 0.0001);
        Assert.Equal("calibration", fit.Lines[0].What);
    }

    // JCGM 100:2008, 4.4.5: limits ± 4 °C, every value equally likely, give u = 2.3 °C
    [Fact]
    public void Limits_give_the_standard_uncertainty_of_the_guide() =>
        Assert.Equal(2.3, BudgetLine.FromLimits("drift", Pressure.FromBar(4)).Standard.Bar, 0.05);

    // By hand: at 9,000 bar/s one millisecond is 9 bar; half a millisecond of lag and a tenth between samples are 5.4 bar
    [Fact]
    public void A_missed_peak_moves_the_upper_side_alone()
    {
        var budget = Gauge(TimeSpan.FromMilliseconds(0.5), TimeSpan.FromMilliseconds(0.1));
        var fit = Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(budget, Window, 9_000e5));
        Assert.Equal(5.4, fit.Capture.Bar, 1e-9);
        Assert.Equal(3, fit.Systematic.BelowLimit.Bar, 1e-9);
        Assert.Equal(8.4, fit.Systematic.AboveLimit.Bar, 1e-9);
    }

    [Fact]
    public void A_device_too_slow_for_the_tool_is_refused_with_the_figure()
    {
        var slow = Assert.IsType<DeviceAnswer.DeviceTooSlow>(ReferenceChain.Examine(Gauge(TimeSpan.FromMilliseconds(4), TimeSpan.FromMilliseconds(1)), Window, 9_000e5));
        Assert.Equal(45, slow.Capture.Bar, 1e-9);
        Assert.Equal(10.5, slow.LargestAllowed.Bar, 1e-9);
    }

    // By hand: ram 39.3 mm, area 1,213.0 mm²; 83.3 kN + 1.45 kN spring + 0.15 kN friction over it is 69.99 MPa = 699.9 bar
    [Fact]
    public void A_force_becomes_the_pressure_that_drives_ram_spring_and_friction()
    {
        var conversion = new ForceConversion(Length.FromMillimetres(39.3), Length.FromMillimetres(0.02), Force.FromNewtons(1_450), Force.FromNewtons(60), Force.FromNewtons(150), Force.FromNewtons(150));
        Assert.Equal(699.9, conversion.Equivalent(Force.FromKilonewtons(83.3)).Bar, 0.05);
        var budget = Gauge(TimeSpan.Zero, TimeSpan.Zero) with { Kind = ReferenceKind.ForceCell, Force = conversion };
        var fit = Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(budget, Window, 9_000e5));
        Assert.Equal(["calibration", "friction", "ram diameter", "spring"], fit.Lines.Select(l => l.What), StringComparer.Ordinal);
    }

    [Fact]
    public void A_memory_nobody_compared_shows_nothing()
    {
        var memory = Gauge(TimeSpan.Zero, TimeSpan.Zero) with { Kind = ReferenceKind.ToolMemory };
        Assert.IsType<DeviceAnswer.NotCompared>(ReferenceChain.Examine(memory, Window, 0));
        Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(memory with { ComparedAtThisVisit = true }, Window, 0));
    }

    private static DeviceBudget Gauge(TimeSpan lag, TimeSpan sampling) => new()
    {
        Kind = ReferenceKind.PortGauge,
        CalibrationExpanded = Pressure.FromBar(3),
        TimeConstant = lag,
        SamplingInterval = sampling,
    };
}
