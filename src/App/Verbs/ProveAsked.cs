using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>The options of <c>prove</c> as they were typed.</summary>
internal sealed record ProveAsked(string? Model, string? Window, int? Runs, string? Systematic, double Coverage, double Confidence, string? Unit, string? Decimal)
{
    /// <summary>The limits and settings that the options mean; null with every mistake when they cannot be taken.</summary>
    public static ProofLimits? Read(ProveAsked asked, out ImmutableArray<Mistake> mistakes)
    {
        var found = new List<Mistake>();
        ServiceModel? model = null;
        PressureWindow? window = null;
        if (asked.Model is null == asked.Window is null)
            found.Add(Usage("--model", asked.Model is null ? "neither --model nor --window was given" : "both --model and --window were given", "give one of the two: a model has its limits"));
        if (asked.Model is not null)
            model = ModelArgument.Read(asked.Model, found);
        if (asked.Window is not null)
            window = ReadWindow(asked.Window, found);

        var limits = model?.Limits.Pressure ?? window;
        var runs = asked.Runs ?? model?.Limits.ProofRuns;
        if (runs is < 2 or > 1000)
            found.Add(Usage("--runs", $"{runs} runs: a series has 2 to 1,000", "give the planned number of full runs"));
        foreach (var (option, share) in new[] { ("--coverage", asked.Coverage), ("--confidence", asked.Confidence) })
        {
            if (share is not (> 0 and < 1))
                found.Add(Usage(option, string.Create(CultureInfo.InvariantCulture, $"{share} is no share"), "write a share above 0 and below 1, such as 0.95"));
        }

        var systematic = Pressure.FromBar(0);
        if (asked.Systematic is not null && limits is { } known)
            systematic = ReadSystematic(asked.Systematic, model?.Limits.Nominal ?? known.Middle, found);
        var options = ReadOptions(asked, model, found);
        mistakes = [.. found];
        return found.Count > 0 || limits is not { } use
            ? null
            : new ProofLimits(use, runs, systematic, asked.Coverage, asked.Confidence, model?.Limits.Rule ?? DecisionRule.OneSidedPerLimit, options);
    }

    private static PressureWindow? ReadWindow(string text, List<Mistake> found)
    {
        var spaced = text.Replace("..", " .. ", StringComparison.Ordinal);
        var parts = text.Split("..");
        if (parts.Length == 2 && parts.All(p => double.TryParse(p, NumberStyles.Float, CultureInfo.InvariantCulture, out _)))
            spaced = $"{parts[0]} bar .. {parts[1]} bar";
        var read = QuantityReader.ReadWindow(spaced, Dimension.Pressure);
        if (read is TextReading<(double Low, double High)>.Good { Value: var (low, high) } && low < high && low >= 0)
            return new PressureWindow(Pressure.FromSi(low), Pressure.FromSi(high));
        found.Add(Usage("--window", read is TextReading<(double Low, double High)>.Bad bad ? bad.Fault.What : $"'{text}': the upper limit must lie above the lower one", "write the lower limit, two dots, the upper one: 679..721 or 67.9MPa..72.1MPa"));
        return null;
    }

    private static Pressure ReadSystematic(string text, Pressure nominal, List<Mistake> found)
    {
        var trimmed = text.Trim();
        if (trimmed.EndsWith('%') && double.TryParse(trimmed[..^1], NumberStyles.Float, CultureInfo.InvariantCulture, out var percent) && percent is >= 0 and <= 100)
            return percent / 100 * nominal;
        if (double.TryParse(trimmed, NumberStyles.Float, CultureInfo.InvariantCulture, out var bare) && double.IsFinite(bare) && bare >= 0)
            return Pressure.FromBar(bare);
        if (QuantityReader.Read<Pressure>(trimmed, Dimension.Pressure) is TextReading<Pressure>.Good { Value: { Pascals: >= 0 } value })
            return value;
        found.Add(Usage("--systematic", $"'{text}' is no uncertainty", "write it zero or more in bar or in % of the nominal pressure: 4bar or 0.6%"));
        return Pressure.FromBar(0);
    }

    private static ReadingsOptions ReadOptions(ProveAsked asked, ServiceModel? model, List<Mistake> found)
    {
        ReadingUnit? unit = asked.Unit?.ToLowerInvariant() switch
        {
            null => null,
            "bar" => ReadingUnit.Bar,
            "mpa" => ReadingUnit.Megapascal,
            "kpa" => ReadingUnit.Kilopascal,
            "psi" => ReadingUnit.Psi,
            "kn" => ReadingUnit.Kilonewton,
            _ => Refuse<ReadingUnit>(found, "--unit", $"'{asked.Unit}' is no unit of readings", "write bar, MPa, kPa, psi or kN"),
        };
        DecimalMark? mark = asked.Decimal?.ToLowerInvariant() switch
        {
            null => null,
            "point" or "." => DecimalMark.Point,
            "comma" or "," => DecimalMark.Comma,
            _ => Refuse<DecimalMark>(found, "--decimal", $"'{asked.Decimal}' is no decimal mark", "write point or comma"),
        };
        return new ReadingsOptions
        {
            Unit = unit,
            Decimal = mark,
            RamArea = model?.Behaviour?.Ram is { } ram ? Area.OfCircle(ram.Diameter) : null,
        };
    }

    private static T? Refuse<T>(List<Mistake> found, string option, string what, string mend)
        where T : struct
    {
        found.Add(Usage(option, what, mend));
        return null;
    }

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}

/// <summary>What a series is judged against.</summary>
internal sealed record ProofLimits(PressureWindow Window, int? Runs, Pressure Systematic, double Coverage, double Confidence, DecisionRule Rule, ReadingsOptions ReadingsOptions);
