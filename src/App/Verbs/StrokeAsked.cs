using System.Globalization;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>Reads what a stroke is asked for; each thing that cannot be taken is a mistake with its remedy.</summary>
internal static class StrokeAsked
{
    /// <summary>Where a connector is touched and how long it builds up, as shares of the stroke: those of the invented reference recordings.</summary>
    private const double ContactShare = 0.55, BuildUpShare = 0.175;

    private const int MostFaults = 50;

    /// <summary>A model below level 3: what of it is missing.</summary>
    public static Mistake WithoutBehaviour(ServiceModel model)
    {
        var missing = ((StrokeParametersReading.Missing)StrokeParametersReading.Of(model)).Facts;
        return new(Place.Whole(model.Tool.Id), $"the model does not say how the tool behaves; missing: {string.Join(", ", missing)}", "add them (level 3, docs/service-model.md, the behaviour); ramwright check shows the level", "no-behaviour");
    }

    public static StrokeParameters ReadFaults(IEnumerable<string> given, StrokeParameters tool, List<Mistake> found)
    {
        var words = given.SelectMany(g => g.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)).ToList();
        if (words.Count > MostFaults)
            found.Add(Usage("--with", $"{words.Count} faults: at most {MostFaults} are taken", "name each fault once"));
        foreach (var twice in words.GroupBy(w => w.Split('=')[0].Trim(), StringComparer.Ordinal).Where(g => g.Count() > 1))
            found.Add(Usage("--with", $"{twice.Key} stands there {twice.Count()} times", "give each fault one value"));
        foreach (var word in words.Take(MostFaults))
        {
            if (StrokeFault.Apply(word, tool) is TextReading<StrokeParameters>.Good good)
                tool = good.Value;
            else if (StrokeFault.Apply(word, tool) is TextReading<StrokeParameters>.Bad bad)
                found.Add(Usage("--with", bad.Fault.What, bad.Fault.Mend));
        }

        return tool;
    }

    public static StrokeLoad ReadLoad(string text, StrokeParameters tool, List<Mistake> found)
    {
        if (text == "close")
            return new StrokeLoad.DiesClose();
        if (text.StartsWith("connector=", StringComparison.Ordinal))
        {
            if (QuantityReader.Read(text["connector=".Length..], Dimension.Force) is TextReading<double>.Good { Value: >= 100 and <= 1e6 and var newtons })
                return new StrokeLoad.Connector(newtons, ContactShare * tool.StrokeMetres, BuildUpShare * tool.StrokeMetres);
            found.Add(Usage("--load", $"'{text["connector=".Length..]}' is no force that a connector takes", "write 100 N to 1,000 kN, such as connector=48kN"));
            return new StrokeLoad.DiesClose();
        }

        found.Add(Usage("--load", $"'{text}' is no load", "write close, or connector= and the force it takes: connector=48kN"));
        return new StrokeLoad.DiesClose();
    }

    public static double? ReadPause(string? text, List<Mistake> found)
    {
        if (text is null)
            return null;
        if (QuantityReader.Read(text, Dimension.Pressure) is TextReading<double>.Good { Value: >= 1e5 and <= 2e8 and var pascals })
            return pascals;
        found.Add(Usage("--pause", $"'{text}' is no pressure to pause at", "write 1 to 2,000 bar with its unit, such as 420bar"));
        return null;
    }

    public static double ReadRate(string text, List<Mistake> found)
    {
        var trimmed = text.Trim();
        var (number, factor) = trimmed.EndsWith("kHz", StringComparison.Ordinal) ? (trimmed[..^3], 1e3) : trimmed.EndsWith("Hz", StringComparison.Ordinal) ? (trimmed[..^2], 1) : ("", 1);
        if (double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value * factor is >= 10 and <= 100_000)
            return value * factor;
        found.Add(Usage("--rate", $"'{text}' is no rate of recording", "write 10 Hz to 100 kHz with its unit, such as 1kHz"));
        return 1000;
    }

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}
