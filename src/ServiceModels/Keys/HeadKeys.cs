using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Level 0: which tool, and what it must keep. Also the fluid.</summary>
internal static class HeadKeys
{
    public static Section Tool { get; } = new("the tool", "Which tool family the model is about.", 0,
    [
        new("id", new IdForm(Named.Model), "the name of the model on the command line and in records", "corrie-85") { Required = true },
        new("name", Values.Text("Corrie 85"), "as people call it", "Corrie 85") { Required = true },
        new("maker", Values.Text("Corrie"), "who makes it", "Corrie"),
        new("kind", Values.Word<ToolKind>("kind of tool"), "what it does with its force", "compression") { Required = true },
        new("mass", Values.Mass, "mass as it is lifted", "6.4 kg"),
        new("revision", Values.Text("3"), "revision of this model, as its author counts", "3"),
        new("source", Values.Text("measured on three tools"), "where the facts come from", "measured on three tools, March"),
        new("notes", Values.Text("for serial numbers from 2000"), "anything else", "for serial numbers from 2000"),
    ]);

    public static Section Limits { get; } = new("the limits", "What the tool must keep, and how often it must show it.", 0,
    [
        new("pressure", Values.PressureWindow, "the limits that a proof is about", "679 bar .. 721 bar") { Required = true },
        new("force", Values.ForceWindow, "the same limits as a force, where the maker states them", "82 kN .. 88 kN"),
        new("nominal", Values.Pressure, "what the relief valve is set for", "700 bar") { Default = "the middle of `pressure`" },
        new("maximum", Values.Pressure, "a tool found above this is quarantined and its frame inspected", "735 bar") { Required = true },
        new("proof-runs", new WholeNumberForm(2, 100), "planned number of full runs in a proof series", "12") { Required = true },
        new("rest", Values.Duration, "rest between full runs", "40 s") { Default = "30 s" },
        new("rule", Values.Word<DecisionRule>("decision rule"), "how a series is judged", "one-sided-per-limit") { Default = "`one-sided-per-limit`" },
    ]);

    public static Section Fluid { get; } = new("the fluid", "The oil in the tool.", 1,
    [
        new("class", Values.Text("HEES"), "class by ISO 6743-4", "HEES") { Required = true },
        new("grade", new WholeNumberForm(2, 3200), "viscosity grade, ISO VG (ISO 3448)", "32"),
        new("capacity", Values.Volume, "how much a dry tool takes", "180 ml"),
        new("price", Values.MoneyPerLitre, "price of a litre", "18.50 EUR/l"),
    ]);
}
