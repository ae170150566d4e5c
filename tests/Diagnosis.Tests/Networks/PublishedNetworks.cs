using System.Text.Json;
using Ramwright.Diagnosis.Networks;

namespace Ramwright.Diagnosis.Tests.Networks;

/// <summary>Posteriors of published networks, see Published/README.md for the sources.</summary>
public sealed class PublishedNetworks
{
    [Theory]
    [InlineData("asia", 8)]
    [InlineData("alarm", 37)]
    [InlineData("insurance", 27)]
    [InlineData("earthquake", 5)]
    [InlineData("win95pts", 76)]
    public void Each_published_posterior_is_met_to_nine_places(string name, int variables)
    {
        var network = Read(name);
        Assert.Equal(variables, network.Variables.Length);
        using var published = JsonDocument.Parse(File.ReadAllText(Published(name + "-posteriors.json")));
        var cases = published.RootElement.GetProperty("cases");
        Assert.True(cases.GetArrayLength() >= 3);
        foreach (var one in cases.EnumerateArray())
        {
            var query = network.IndexOf(one.GetProperty("query").GetString()!);
            var known = one.GetProperty("evidence").EnumerateObject().Select(e => KnownOf(network, e.Name, e.Value.GetString()!)).ToList();
            var answer = Assert.IsType<NetworkAnswer.Posterior>(NetworkPosterior.Of(network, query, known));
            Assert.Equal(one.GetProperty("states").EnumerateArray().Select(s => s.GetString()), network.Variables[query].States);
            var posterior = one.GetProperty("posterior").EnumerateArray().Select(p => p.GetDouble()).ToList();
            for (var s = 0; s < posterior.Count; s++)
                Assert.Equal(posterior[s], answer.Probabilities[s], 1e-9);
            Assert.Equal(one.GetProperty("probability_of_evidence").GetDouble(), Math.Exp(answer.LogEvidence), 1e-9);
        }
    }

    // Russell and Norvig: P(B | j, m) = 0.284; P(J | b) and P(A | b) as in small-networks.json. earthquake.bif is another variant of this network.
    [Fact]
    public void The_burglary_network_of_the_textbook()
    {
        var network = Assert.IsType<NetworkReading.Read>(BifReader.Read("""
            network burglary { }
            variable B { type discrete [2] { t, f }; }  variable E { type discrete [2] { t, f }; }
            variable A { type discrete [2] { t, f }; }  variable J { type discrete [2] { t, f }; }  variable M { type discrete [2] { t, f }; }
            probability (B) { table .001, .999; }  probability (E) { table .002, .998; }
            probability (A | B, E) { (t, t) .95, .05; (t, f) .94, .06; (f, t) .29, .71; default .001, .999; }
            probability (J | A) { (t) .9, .1; (f) .05, .95; }
            probability (M | A) { (t) .7, .3; (f) .01, .99; }
            """, "burglary.bif")).Network;
        Assert.Equal(0.849017, Truth(network, "J", KnownOf(network, "B", "t")), 5e-7);
        Assert.Equal(0.94002, Truth(network, "A", KnownOf(network, "B", "t")), 5e-6);
        Assert.Equal(0.2841718, Truth(network, "B", KnownOf(network, "J", "t"), KnownOf(network, "M", "t")), 5e-8);
    }

    // Either is true when tuberculosis is: asia.bif says so with probability 1.
    [Fact]
    public void What_cannot_be_is_said_and_not_divided_by()
    {
        var asia = Read("asia");
        Assert.IsType<NetworkAnswer.Contradictory>(NetworkPosterior.Of(asia, asia.IndexOf("smoke"), [KnownOf(asia, "tub", "yes"), KnownOf(asia, "either", "no")]));
        Assert.IsType<NetworkAnswer.Contradictory>(NetworkPosterior.Of(asia, asia.IndexOf("tub"), [KnownOf(asia, "tub", "yes"), KnownOf(asia, "either", "no")]));
    }

    [Fact]
    public void A_variable_that_is_known_and_asked_for_is_what_is_known()
    {
        var asia = Read("asia");
        var answer = Assert.IsType<NetworkAnswer.Posterior>(NetworkPosterior.Of(asia, asia.IndexOf("bronc"), [KnownOf(asia, "bronc", "no")]));
        Assert.Equal([0, 1], answer.Probabilities);
        Assert.Equal(0.55, Math.Exp(answer.LogEvidence), 1e-12);
    }

    [Fact]
    public void A_network_too_wide_is_an_answer_before_any_work()
    {
        var network = Read("insurance");
        var answer = Assert.IsType<NetworkAnswer.TooWide>(NetworkPosterior.Of(network, network.IndexOf("PropCost"), [], cellLimit: 1000));
        Assert.True(answer.Cells > 1000);
    }

    internal static BayesNetwork Read(string name) => Assert.IsType<NetworkReading.Read>(BifReader.Read(File.ReadAllText(Published(name + ".bif")), name + ".bif")).Network;

    internal static string Published(string file) => Path.Combine(AppContext.BaseDirectory, "Networks", "Published", file);

    private static Known KnownOf(BayesNetwork network, string variable, string state)
    {
        var place = network.IndexOf(variable);
        return new(place, network.Variables[place].StateIndex(state));
    }

    private static double Truth(BayesNetwork network, string of, params Known[] known) =>
        Assert.IsType<NetworkAnswer.Posterior>(NetworkPosterior.Of(network, network.IndexOf(of), known)).Probabilities[0];
}
