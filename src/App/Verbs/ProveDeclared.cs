using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Proving;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>What <c>prove</c> is told that was declared before the first run: the rule, an extension, earlier series.</summary>
internal static class ProveDeclared
{
    private const int MostRuns = 1000;

    /// <summary>The rule by its word; null when none was given or, with a mistake added, when it is none.</summary>
    public static DecisionRule? Rule(string? typed, List<Mistake> found)
    {
        DecisionRule? rule = typed?.Trim().ToLowerInvariant() switch
        {
            "claims" => DecisionRule.OneSidedPerLimit,
            "interval" => DecisionRule.TwoSidedInterval,
            "every-run" => DecisionRule.EveryRunGuarded,
            _ => null,
        };
        if (typed is not null && rule is null)
            found.Add(Usage("--rule", $"'{typed}' is no rule", "write claims, interval or every-run"));
        return rule;
    }

    /// <summary>Two numbers of runs, as <c>12+12</c>; null when none was given or, with a mistake added, when they cannot be taken.</summary>
    public static (int First, int More)? Extension(string? typed, int? runs, List<Mistake> found)
    {
        if (typed is null)
            return null;
        var parts = typed.Split('+');
        if (parts.Length == 2
            && int.TryParse(parts[0], CultureInfo.InvariantCulture, out var first)
            && int.TryParse(parts[1], CultureInfo.InvariantCulture, out var more)
            && first is >= 2 and <= MostRuns && more is >= 1 and <= MostRuns)
        {
            if (runs is { } other && other != first)
                found.Add(Usage("--extension", string.Create(CultureInfo.InvariantCulture, $"--runs says {other} runs and --extension {first} at first"), "leave --runs out: the first number of --extension is the planned runs"));
            return (first, more);
        }

        found.Add(Usage("--extension", $"'{typed}' is no pair of numbers of runs", "write the planned runs, a plus, the runs to come if they leave it undecided: 12+12"));
        return null;
    }

    /// <summary>Whether what was declared goes together; adds a mistake when not.</summary>
    public static void Together(DecisionRule rule, bool extended, bool moderated, int? runs, List<Mistake> found)
    {
        if (extended && moderated)
            found.Add(Usage("--extension", "an extension and earlier series do not go together: no factor is known that keeps the confidence of both", "declare one of the two"));
        if ((extended || moderated) && rule != DecisionRule.OneSidedPerLimit)
            found.Add(Usage(extended ? "--extension" : "--earlier", "it goes with claims per limit alone", "leave it out, or judge by --rule claims if that was agreed before the first run"));
        if (moderated && runs > EarlierSeries.MostRuns)
            found.Add(Usage("--earlier", string.Create(CultureInfo.InvariantCulture, $"{runs} runs: from {EarlierSeries.MostRuns} on a tool's own scatter says all"), "leave --earlier out"));
    }

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}
