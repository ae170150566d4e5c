using System.Collections.Immutable;
using Ramwright.Metrology.Conformity;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Proving.Reference;

namespace Ramwright.Proving.Tests;

public sealed class ProofRiskTests
{
    private static readonly ProofSeries Series = new()
    {
        Limits = new(Pressure.FromBar(679), Pressure.FromBar(721)),
        PlannedRuns = 12,
        Systematic = new(Pressure.FromBar(4), Pressure.FromBar(4), Pressure.FromBar(0)),
        Peaks = [.. new[] { 716.0, 718, 717, 719, 716, 718, 717, 715, 718, 717, 716, 717 }.Select(Pressure.FromBar)],
    };

    // By hand: mean 717 bar, s = 1.128 bar, u = √(2² + 1.128²/12) = 2.026 bar; (721 − 717)/2.026 = 1.974, so Φ = 0.9758 (normal table) and 2.42 % beyond.
    [Fact]
    public void The_mean_and_its_uncertainty_give_the_chance_of_conformance()
    {
        var verdict = ProofDecision.Decide(Series);
        var risk = ProofRisk.Of(Series, verdict, Pressure.FromBar(0), [])!;
        Assert.Equal(2.026, risk.Standard.Bar, 0.0005);
        Assert.Equal(0.9758, risk.Conformance, 0.00005);
        Assert.Equal(0.0242, risk.SpecificFalseAccept, 0.00005);
        Assert.Equal(0, Assert.IsType<PastTools.TooFew>(risk.Past).Tools);
        Assert.Null(risk.Global);
    }

    // The prior of past tools: a brute-force count over tools and readings drawn by the same two normal laws.
    [Fact]
    public void Past_tools_give_a_prior_and_the_risks_of_the_rule_over_all_tools()
    {
        ImmutableArray<Pressure> past = [.. Enumerable.Range(0, 20).Select(i => Pressure.FromBar(690 + i))];
        var verdict = ProofDecision.Decide(Series);
        var risk = ProofRisk.Of(Series, verdict, Pressure.FromBar(0), past)!;
        var prior = Assert.IsType<PastTools.Known>(risk.Past).Prior;
        Assert.Equal(699.5e5, prior.Mean, 1);
        var (chance, trials, accepted, rejected) = (new Random(20_260), 400_000, 0, 0);
        for (var i = 0; i < trials; i++)
        {
            var tool = prior.Mean + (prior.StandardDeviation * Drawn());
            var read = tool + (risk.Standard.Pascals * Drawn());
            var conforms = tool is >= 679e5 and <= 721e5;
            var takes = read >= verdict.GuardLow.Pascals && read <= verdict.GuardHigh.Pascals;
            accepted += takes && !conforms ? 1 : 0;
            rejected += !takes && conforms ? 1 : 0;
        }

        Assert.Equal((double)accepted / trials, risk.Global!.FalseAccept, 3e-5 + (4 * Math.Sqrt(risk.Global.FalseAccept / trials)));
        Assert.Equal((double)rejected / trials, risk.Global.FalseReject, 4 * Math.Sqrt(risk.Global.FalseReject / trials));

        double Drawn() => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()); // Box and Muller
    }

    // By hand: 700 bar on 1 213.04 mm² is 84.913 kN, less 1.69 and 0.6 kN: 82.623 kN; U of a cell of 340 N alone with the scatter of the mean.
    [Fact]
    public void The_output_force_is_what_a_cell_read_and_knows_no_ram()
    {
        var ram = new ForceConversion(Length.FromMillimetres(39.3), Length.FromMillimetres(0.05), Force.FromNewtons(1_690), Force.FromNewtons(169), Force.FromNewtons(600), Force.FromNewtons(300));
        var verdict = ProofDecision.Decide(Series with { Peaks = [.. Enumerable.Range(0, 12).Select(i => Pressure.FromBar(i % 2 == 0 ? 699 : 701))] });
        var cell = Budget(new DeviceBudget { Kind = ReferenceKind.ForceCell, Force = ram, Reading = [new("calibration", new Spread.Expanded(340, 2), Effect.Systematic)] });
        var gauge = Budget(new DeviceBudget { Kind = ReferenceKind.PortGauge, Reading = [new("calibration", new Spread.Expanded(2.8e5, 2), Effect.Systematic)] });
        var read = ProofForce.Of(cell, verdict, ram)!;
        Assert.Equal(82.623, read.Estimate.Kilonewtons, 0.001);
        Assert.Equal(1.96 * Math.Sqrt((170 * 170) + Math.Pow(1.0445e5 * 1.21304e-3, 2) / 12), read.Expanded.Newtons, 0.1); // t with nearly all of its freedom known
        Assert.True(read.Agree);
        Assert.True(read.Low < read.Estimate && read.High > read.Estimate);

        var reckoned = ProofForce.Of(gauge, verdict, ram)!;
        Assert.Equal(read.Estimate.Newtons, reckoned.Estimate.Newtons, 1e-6);
        Assert.True(reckoned.Expanded > read.Expanded);
        Assert.Equal("ram diameter", ProofForce.Of(gauge, verdict, ram with { DiameterLimit = Length.FromMillimetres(0.5) })!.Largest);
        Assert.False(ProofForce.Of(gauge, verdict, ram with { DiameterLimit = Length.FromMillimetres(0.5) })!.Agree); // one rectangular part outweighs the rest
    }

    private static ReferenceBudget Budget(DeviceBudget device) => Assert.IsType<DeviceAnswer.Fit>(ReferenceChain.Examine(device, Series.Limits, 0)).Budget;
}
