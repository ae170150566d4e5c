using Ramwright.Metrology.Uncertainty;
using static Ramwright.Metrology.Tests.Uncertainty.Models;

namespace Ramwright.Metrology.Tests.Uncertainty;

public sealed class WorkedExamples
{
    // JCGM 100:2008, 4.4.3, Table 1 (from memory): 20 temperatures, mean 100.145 °C, u 0.333 °C
    [Fact]
    public void Repeated_temperatures_of_the_GUM()
    {
        var component = Component.OfReadings("readings", [96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57, 101.84, 102.36, 102.72]);
        Assert.Equal(0.333, component.Spread.Standard, 0.0005);
        Assert.Equal(19, component.DegreesOfFreedom);
    }

    // JCGM 100:2008, 4.4.5 and 4.4.6 (from memory): between 96 and 104 °C, u 2.3 °C rectangular and 1.6 °C triangular; H.1.3.4: ± 0.5 °C of a cycle gives 0.35 °C
    [Fact]
    public void Divisors_of_the_GUM()
    {
        Assert.Equal(2.3, new Spread.Rectangular(4).Standard, 0.05);
        Assert.Equal(1.6, new Spread.Triangular(4).Standard, 0.05);
        Assert.Equal(0.35, new Spread.UShaped(0.5).Standard, 0.005);
        Assert.Equal(22.5, new Spread.Expanded(45, 2).Standard);
    }

    // JCGM 100:2008, G.4.1 (from memory): y = x1·x2·x3 with 0.25 %, 0.57 %, 0.82 % of 10, 5, 15 readings: 1.03 %, ν 19.0, t 2.09, U 2.2 %
    [Fact]
    public void Effective_degrees_of_freedom_of_the_GUM()
    {
        var answer = Of("x1 * x2 * x3", X("x1", 1, Normal(0.25e-2, 9)), X("x2", 1, Normal(0.57e-2, 4)), X("x3", 1, Normal(0.82e-2, 14))).Linear();
        Assert.Equal(1.03e-2, answer.Standard, 0.005e-2);
        Assert.Equal(19.0, answer.DegreesOfFreedom, 0.05);
        Assert.Equal(2.09, answer.Factor, 0.005);
        Assert.Equal(2.2e-2, answer.Expanded, 0.05e-2);
    }

    // JCGM 100:2008, H.1 and Table H.1: the example rounds as it goes and cuts ν 16.75 to 16, so U is 93 nm there and 92.3 nm unrounded
    [Fact]
    public void End_gauge_of_the_GUM()
    {
        var answer = EndGauge.Budget.Linear(0.99);
        Assert.Equal(50_000_838, answer.Estimate, 0.5);
        Assert.Equal(32, answer.Standard, 0.5);
        Assert.Equal(31.663879111008633, answer.Standard, 1e-9);
        Assert.Equal(16, Math.Floor(answer.DegreesOfFreedom));
        Assert.Equal(2.92, Propagation.Factor(0.99, 16), 0.005);
        Assert.Equal(93, 2.92 * 32, 0.5);
        Assert.Equal(2.9, answer.Lines.Single(l => l.Input == "dalpha").Amount, 0.05);
        Assert.Equal(16.6, answer.Lines.Single(l => l.Input == "dtheta").Amount, 0.05);
        Assert.Equal(9.7, Math.Sqrt(answer.Lines.Where(l => l.Input == "d").Sum(l => l.Amount * l.Amount)), 0.05);
        Assert.Equal(1, answer.Lines.Sum(l => l.Share), 1e-12);
    }

    // JCGM 100:2008, H.2 (from memory): resistance, reactance, impedance from voltage, current and phase, whose means are correlated
    [Theory]
    [InlineData("V / I * cos(phi)", 127.732, 0.071)]
    [InlineData("V / I * sin(phi)", 219.847, 0.295)]
    [InlineData("V / I + 0 * phi", 254.260, 0.236)]
    public void Correlated_impedance_of_the_GUM(string model, double estimate, double standard)
    {
        var budget = Of(model, X("V", 4.9990, Normal(0.0032)), X("I", 19.6610e-3, Normal(0.0095e-3)), X("phi", 1.04446, Normal(0.00075)))
            .With(new(0, 1, -0.36), new(0, 2, 0.86), new(1, 2, -0.65));
        var answer = budget.Linear();
        Assert.Equal(estimate, answer.Estimate, 0.005); // the printed estimate comes from unrounded means
        Assert.Equal(standard, answer.Standard, 0.0015); // inputs are printed with two digits
    }

    // EA-4/02 M:2013, Supplement 1, S2: 10 kg weight, u 29.3 mg, U 59 mg (u and U from memory)
    [Fact]
    public void Ten_kilogram_weight_of_EA_4_02()
    {
        var answer = Of(
            "mS + dmD + dm + dmC + dB",
            X("mS", 10_000_005, new Component("certificate", new Spread.Expanded(45, 2), Effect.Systematic)),
            X("dmD", 0, Rectangular(15, effect: Effect.Systematic)),
            X("dm", 20, Normal(25 / Math.Sqrt(3))),
            X("dmC", 0, Rectangular(10, effect: Effect.Systematic)),
            X("dB", 0, Rectangular(10, effect: Effect.Systematic))).Linear(0.9545);
        Assert.Equal(10_000_025, answer.Estimate);
        Assert.Equal(29.3, answer.Standard, 0.05);
        Assert.Equal(59, answer.Expanded, 0.5);
        Assert.Equal(25 / Math.Sqrt(3), answer.Random, 1e-9);
        Assert.Equal(answer.Standard, Math.Sqrt(answer.Systematic * answer.Systematic + answer.Random * answer.Random), 1e-9);
    }

    // EA-4/02 M:2013, Supplement 1, S4 (from memory): 50 mm gauge block, 49.999926 mm, u 36.4 nm, U 73 nm
    [Fact]
    public void Gauge_block_of_EA_4_02()
    {
        var answer = Of(
            "lS + dlD + dl + dlC + slope * dt + product + dlV",
            X("lS", 50_000_020, new Component("certificate", new Spread.Expanded(30, 2), Effect.Systematic)),
            X("dlD", 0, Rectangular(30)),
            X("dl", -94, Normal(12 / Math.Sqrt(5))),
            X("dlC", 0, Rectangular(32)),
            X("slope", -575),
            X("dt", 0, Rectangular(0.05)),
            X("product", 0, Normal(11.8)),
            X("dlV", 0, Rectangular(6.7))).Linear(0.9545);
        Assert.Equal(49_999_926, answer.Estimate, 0.5);
        Assert.Equal(36.4, answer.Standard, 0.05);
        Assert.Equal(73, answer.Expanded, 0.5);
    }

    // NIST Technical Note 1900, Example E13: α = (L1 − L0)/(L0·(T1 − T0)), 1.7266e-5 /K, u 1.76e-6 /K
    [Fact]
    public void Thermal_expansion_of_NIST()
    {
        var answer = Of("(L1 - L0) / (L0 * (T1 - T0))", X("L0", 1.4999, Normal(0.0001)), X("L1", 1.5021, Normal(0.0002)), X("T0", 288.15, Normal(0.02)), X("T1", 373.10, Normal(0.05))).Linear();
        Assert.Equal(1.7266e-5, answer.Estimate, 0.00005e-5);
        Assert.Equal(1.76e-6, answer.Standard, 0.005e-6);
        Assert.Equal(1.7554772808125777e-6, answer.Standard, 1e-15);
    }

    // Pressure-sensor data of R. Kessel as worked in the documentation of the open GTC library: p = a + b·(x + e_res) + e_lin, a and b correlated
    [Theory]
    [InlineData(0.0, 0.00582812)]
    [InlineData(0.2039, 0.00584124)]
    [InlineData(0.408, 0.00589119)]
    [InlineData(0.612, 0.00597701)]
    [InlineData(0.816, 0.0060972)]
    [InlineData(1.0201, 0.00624986)]
    [InlineData(1.2242, 0.00643263)]
    [InlineData(1.4283, 0.00664303)]
    [InlineData(1.6325, 0.00687865)]
    [InlineData(1.8367, 0.00713689)]
    [InlineData(2.041, 0.00741554)]
    public void Two_point_calibration_of_a_pressure_sensor(double reading, double expanded)
    {
        var budget = Of("a + b * (x + res) + lin", X("a", 0, Normal(0.00028)), X("b", 9.79912, Normal(0.00114)), X("x", reading), X("res", 0, Rectangular(5e-5)), X("lin", 0, Rectangular(0.005)))
            .With(new Correlation(0, 1, -0.1212));
        Assert.Equal(expanded, 2 * budget.Linear().Standard, 0.5e-8);
    }
}
