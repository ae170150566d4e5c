using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>The options of <c>prove</c> as they were typed.</summary>
internal sealed record ProveAsked
{
    public string? Model { get; init; }
    public string? Window { get; init; }
    public int? Runs { get; init; }
    public string? Systematic { get; init; }
    public string? PeakCapture { get; init; }
    public string? Resolution { get; init; }
    public double Coverage { get; init; }
    public double Confidence { get; init; }
    public string? Unit { get; init; }
    public string? Decimal { get; init; }
    public string? Rule { get; init; }
    public string? Extension { get; init; }
    public string? Earlier { get; init; }

    /// <summary>The limits and settings that the options mean; null with every mistake when they cannot be taken.</summary>
    public static ProofLimits? Read(ProveAsked asked, out ImmutableArray<Mistake> mistakes)
    {
        var found = new List<Mistake>();
        ServiceModel? model = null;
        PressureWindow? window = null;
        ReadingUnit? windowUnit = null;
        if (asked.Model is null == asked.Window is null)
            found.Add(Usage("--model", asked.Model is null ? "neither --model nor --window was given" : "both --model and --window were given", "give one of the two: a model has its limits"));
        if (asked.Model is not null)
            model = ModelArgument.Read(asked.Model, found);
        if (asked.Window is not null)
            window = PressureOption.ReadWindow(asked.Window, found, out windowUnit);

        var limits = model?.Limits.Pressure ?? window;
        var extension = ProveDeclared.Extension(asked.Extension, asked.Runs, found);
        var runs = extension?.First ?? asked.Runs ?? model?.Limits.ProofRuns;
        var rule = ProveDeclared.Rule(asked.Rule, found) ?? model?.Limits.Rule ?? DecisionRule.OneSidedPerLimit;
        ProveDeclared.Together(rule, extension is not null, asked.Earlier is not null, runs, found);
        if (runs is < 2 or > 1000)
            found.Add(Usage("--runs", string.Create(CultureInfo.InvariantCulture, $"{runs} runs: a series has 2 to 1,000"), "give the planned number of full runs"));
        foreach (var (option, share) in new[] { ("--coverage", asked.Coverage), ("--confidence", asked.Confidence) })
        {
            if (share is not (> 0 and < 1))
                found.Add(Usage(option, string.Create(CultureInfo.InvariantCulture, $"{share} is no share"), "write a share above 0 and below 1, such as 0.95"));
        }

        var nominal = model?.Limits.Nominal ?? limits?.Middle ?? Pressure.FromBar(0);
        var systematic = Amount(asked.Systematic, "--systematic", nominal, found) ?? Pressure.FromBar(0);
        var capture = Amount(asked.PeakCapture, "--peak-capture", nominal, found) ?? Pressure.FromBar(0);
        var resolution = Amount(asked.Resolution, "--resolution", nominal, found);
        var options = ReadOptions(asked, model, windowUnit, found);
        mistakes = [.. found];
        return found.Count > 0 || limits is not { } use ? null : new ProofLimits
        {
            Window = use,
            Runs = runs,
            Systematic = new SystematicUncertainty(systematic, systematic + capture, Pressure.FromBar(0)),
            Resolution = resolution is { Pascals: > 0 } ? resolution : null,
            Coverage = asked.Coverage,
            Confidence = asked.Confidence,
            Rule = rule,
            MoreRuns = extension?.More,
            Readings = options,
        };
    }

    private static Pressure? Amount(string? typed, string option, Pressure nominal, List<Mistake> found) =>
        typed is null ? null : PressureOption.ReadAmount(option, typed, nominal, found);

    private static ReadingsOptions ReadOptions(ProveAsked asked, ServiceModel? model, ReadingUnit? windowUnit, List<Mistake> found)
    {
        var unit = asked.Unit is { } symbol ? ReadingUnits.Find(symbol.Trim()) : null;
        if (asked.Unit is not null && unit is null)
            found.Add(Usage("--unit", $"'{asked.Unit}' is no unit of readings", $"write {ReadingUnits.Known}"));
        DecimalMark? mark = asked.Decimal?.ToLowerInvariant() switch
        {
            "point" or "." => DecimalMark.Point,
            "comma" or "," => DecimalMark.Comma,
            _ => null,
        };
        if (asked.Decimal is not null && mark is null)
            found.Add(Usage("--decimal", $"'{asked.Decimal}' is no decimal mark", "write point or comma"));
        var force = model is null ? null : RamForce.Of(model);
        return new ReadingsOptions
        {
            Unit = unit,
            AssumedUnit = windowUnit ?? ReadingUnit.Bar,
            Decimal = mark,
            RamArea = force is null ? null : Area.OfCircle(force.RamDiameter),
            ForceHeldBack = force is null ? default : force.Spring + force.Friction,
        };
    }

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}

/// <summary>What a series is judged against, and how its file is read.</summary>
internal sealed record ProofLimits
{
    public required PressureWindow Window { get; init; }

    /// <summary>Planned runs; null takes as many as are there.</summary>
    public required int? Runs { get; init; }

    public required SystematicUncertainty Systematic { get; init; }
    public required Pressure? Resolution { get; init; }
    public required double Coverage { get; init; }
    public required double Confidence { get; init; }
    public required DecisionRule Rule { get; init; }

    /// <summary>Runs of a declared extension; null without one.</summary>
    public required int? MoreRuns { get; init; }

    public required ReadingsOptions Readings { get; init; }
}
