using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Instruments;
using Ramwright.Metrology.Text;
using Ramwright.Proving;
using Ramwright.Proving.Text;

namespace Ramwright.App.Verbs;

/// <summary>The verdict on a file of readings, as text for people and as an object for programs.</summary>
internal static class ProveAnswer
{
    public static Answer Of(Verdict verdict, ProofSeries series, ReadingsAnswer.Taken taken, ReadingsOptions read)
    {
        var units = taken.Unit == ReadingUnit.Psi ? UnitSystem.Imperial : UnitSystem.Metric;
        string[] lines = [.. VerdictText.Lines(verdict, series, units), .. Voids(taken, units), .. Forces(taken, read)];
        var json = VerdictJson.Of(verdict, series);
        json["systematic"] = new JsonObject { ["belowReading"] = series.Systematic.BelowLimit.Bar, ["aboveReading"] = series.Systematic.AboveLimit.Bar };
        json["readingsUnit"] = taken.Unit.Symbol();
        json["assumed"] = taken.UnitAssumed ? new JsonArray("unit") : [];
        json["voidRuns"] = new JsonArray([.. taken.Void.Select(v => new JsonObject { ["run"] = v.Run, ["line"] = v.Line, ["peak"] = v.Peak?.Bar, ["cause"] = v.Cause })]);
        return new Answer(ExitOf(verdict.Conformity), string.Join("\n  ", [VerdictText.Headline(verdict, units), .. lines]), json);
    }

    private static Exit ExitOf(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => Exit.Yes,
        Conformity.DoesNotConform => Exit.No,
        _ => Exit.Undecided,
    };

    private static IEnumerable<string> Voids(ReadingsAnswer.Taken taken, UnitSystem units)
    {
        if (taken.Void.IsEmpty)
            yield break;
        yield return string.Create(CultureInfo.InvariantCulture, $"{taken.Readings.Length} runs count, {taken.Void.Length} {(taken.Void.Length == 1 ? "is" : "are")} void:");
        foreach (var run in taken.Void)
            yield return string.Create(CultureInfo.InvariantCulture, $"  run {run.Run} (line {run.Line}{(run.Peak is { } peak ? ", " + QuantityText.Show(peak, units) : "")}): {run.Cause}");
    }

    private static IEnumerable<string> Forces(ReadingsAnswer.Taken taken, ReadingsOptions read)
    {
        if (taken.Unit == ReadingUnit.Kilonewton && read.RamArea is { } area)
            yield return string.Create(CultureInfo.InvariantCulture, $"pressure from force: (F + {read.ForceHeldBack.Kilonewtons:0.##} kN that spring and friction hold back) / {area.SquareMetres * 1e6:0.#} mm² of ram");
    }
}
