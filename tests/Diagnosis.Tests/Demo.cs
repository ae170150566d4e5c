using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Tests;

/// <summary>The models of the demo shop and complaints in short: symptoms with a minus before those that are not there.</summary>
internal static class Demo
{
    private static readonly Dictionary<string, FaultNetwork> Networks = new[] { "corrie-85", "skerry-52" }.ToDictionary(id => id, id => FaultNetwork.Of(Model(id)));

    public static FaultNetwork Network(string id) => Networks[id];

    public static ActionOptions Options { get; } = new() { Rates = new Rates { LabourPerHour = new Money(66, "EUR") } };

    public static Evidence Complaint(string words, params (string Check, string Outcome)[] checks)
    {
        var all = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return new()
        {
            Seen = [.. all.Where(w => w[0] != '-').Select(w => new SymptomId(w))],
            NotSeen = [.. all.Where(w => w[0] == '-').Select(w => new SymptomId(w[1..]))],
            Checks = [.. checks.Select(c => new CheckResult(new(c.Check), c.Outcome))],
        };
    }

    public static FaultReport Weigh(string model, Evidence evidence) => Assert.IsType<FaultAnswer.Found>(FaultFinder.Weigh(Network(model), evidence)).Report;

    public static Advice Advise(string model, Evidence evidence, ActionOptions? options = null) =>
        Assert.IsType<ActionAnswer.Advised>(NextAction.Advise(Network(model), evidence, options ?? Options)).Advice;

    private static ServiceModel Model(string id) => Assert.IsType<ModelReading.Read>(ModelReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "models", id + ".yaml"))).Model;
}
