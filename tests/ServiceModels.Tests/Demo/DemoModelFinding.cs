using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Tests.Demo;

/// <summary>The fault networks of the demo models hang together.</summary>
public sealed class DemoModelFinding
{
    public static TheoryData<string> Ids => ["corrie-85", "corrie-85-port", "skerry-52"];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_fault_shows_and_can_be_mended(string id)
    {
        var model = DemoModels.Of(id);
        Assert.InRange(model.Faults.Length, 12, 30);
        Assert.InRange(model.Symptoms.Length, 15, 30);
        Assert.InRange(model.Checks.Length, 6, 16);
        Assert.Equal("drive, head, movement, oil, pressure, sound", string.Join(", ", model.Symptoms.Select(s => s.Group).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)));
        Assert.All(model.Faults, f =>
        {
            Assert.InRange(f.Rate, 0.005, 0.25);
            Assert.NotEmpty(f.Parts);
            Assert.Contains(model.Symptoms, s => s.Causes.Any(c => c.Fault == f.Id && c.Probability >= 0.2));
            Assert.Contains(model.Remedies, r => r.Mends.Any(m => m.Fault == f.Id && m.Probability >= 0.7));
        });
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_outcomes_of_a_check_exhaust_it_whatever_is_wrong(string id)
    {
        var model = DemoModels.Of(id);
        Assert.All(model.Checks, check =>
        {
            Assert.True(check.Outcomes.Length >= 2);
            Assert.Equal(1, check.Outcomes.Sum(o => o.WhenSound), tolerance: 1e-9);
            foreach (var fault in model.Faults)
                Assert.Equal(1, check.Outcomes.Sum(o => o.WhenFault.FirstOrDefault(c => c.Fault == fault.Id)?.Probability ?? o.WhenSound), tolerance: 1e-9);
        });
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_remedy_renews_only_what_it_frees_or_what_lies_bare_then(string id)
    {
        var model = DemoModels.Of(id);
        Assert.All(model.Remedies, r => Assert.NotEmpty(r.Mends));
        Assert.All(model.Remedies.SelectMany(r => r.Renews), p => Assert.NotEqual(RenewalRule.Never, model.FindPart(p)!.Renew));
    }
}
