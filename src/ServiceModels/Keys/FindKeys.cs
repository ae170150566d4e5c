using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Level 3: faults, symptoms, checks, remedies.</summary>
internal static class FindKeys
{
    public static Section Fault { get; } = new("a fault", "Something that can be wrong with the tool.", 3,
    [
        new("name", Values.Text("relief opens too low"), "in plain words", "relief opens too low") { Default = "the id in words" },
        new("rate", Values.Share, "share of the tools sent in that have it", "4 %") { Required = true },
        new("parts", Values.Parts, "parts that are at fault", "[relief-spring]"),
    ]);

    public static Section Symptom { get; } = new("a symptom", "Something seen, heard or felt; a leaky noisy-OR of the faults that cause it.", 3,
    [
        new("name", Values.Text("oil at the cap"), "in plain words", "oil at the cap") { Default = "the id in words" },
        new("group", Values.Word<SymptomGroup>("group of symptoms"), "heading under which it is offered", "oil") { Required = true },
        new("leak", Values.Share, "how often it shows although no listed fault causes it", "1 %") { Default = "0 %" },
        new("causes", Causes, "for each fault how often it alone brings the symptom", "{ relief-low: 80 % }") { Required = true },
    ]);

    public static Section Outcome { get; } = new("an outcome", "One answer that a check can give.", 3,
    [
        new("name", Values.Text("pressure falls"), "in plain words", "pressure falls") { Default = "the id in words" },
        new("when-sound", Values.Share, "how often it comes with no fault at all", "5 %") { Required = true },
        new("when", Causes, "how often it comes with a fault, where that differs", "{ bypass-leaks: 90 % }"),
    ]);

    public static Section Check { get; } = WorkKeys.WithCautions("a check", "Something tried that costs time and answers with one of its outcomes.", 3,
    [
        new("name", Values.Text("hold at 500 bar for a minute"), "in the imperative", "hold at 500 bar for a minute") { Default = "the id in words" },
        new("minutes", Values.Minutes, "time for it", "3") { Required = true },
        WorkKeys.Needs,
        new("tool", Values.Tool, "the shop tool it takes", "gauge"),
        new("live", Values.Flag, "the tool runs under power for it", "true") { Default = "false" },
        new("instead-of", Values.Symptoms, "symptoms that it shows more exactly; together they count once", "[pressure-decays]"),
        new("outcomes", Values.ById(Outcome, kind: null), "two outcomes or more", "{ falls: { when-sound: 5 % }, holds: { when-sound: 95 % } }") { Required = true },
    ]);

    public static Section Remedy { get; } = new("a remedy", "What is renewed or done, and which faults it mends.", 3,
    [
        new("name", Values.Text("renew the ram seals"), "in plain words", "renew the ram seals") { Default = "the id in words" },
        new("frees", Values.Parts, "parts to take off for it", "[ram]"),
        new("renews", Values.Parts, "parts renewed", "[seal-ram]"),
        new("minutes", Values.Minutes, "work beyond freeing and renewing", "2") { Default = "0" },
        new("mends", Causes, "for each fault how often it is then gone", "{ bypass-leaks: 95 % }") { Required = true },
    ]);

    private static KeyForm Causes => new NumberMapForm(Named.Fault, Values.Share);
}

/// <summary>Headings for symptoms.</summary>
internal enum SymptomGroup
{
    Oil,
    Pressure,
    Movement,
    Sound,
    Drive,
    Head,
}
