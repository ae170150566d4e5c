using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Measurements;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>Reads what is known of a tool from the command line; each thing that cannot be taken is a mistake with its remedy.</summary>
internal sealed class DiagnoseAsked(ServiceModel model, List<Mistake> found)
{
    public Evidence Evidence(string[] seen, string[] notSeen, string[] checks, string[] measured)
    {
        ImmutableArray<SymptomId> yes = Symptoms(seen, "--seen"), no = Symptoms(notSeen, "--not-seen");
        foreach (var both in yes.Intersect(no))
            found.Add(Usage("--not-seen", $"'{both}' is seen and not seen", "leave one of the two out"));
        return new() { Seen = yes, NotSeen = no, Checks = Checks(checks), Readings = Readings(measured) };
    }

    public ImmutableArray<RemedyId> Tried(string[] given) =>
        [.. Known(given, model.Remedies.Select(r => r.Id.Value), "--tried", "remedy", "unknown-remedy").Select(r => new RemedyId(r))];

    private ImmutableArray<SymptomId> Symptoms(string[] given, string option) =>
        [.. Known(given, model.Symptoms.Select(s => s.Id.Value), option, "symptom", "unknown-symptom").Select(s => new SymptomId(s))];

    private ImmutableArray<CheckResult> Checks(string[] given)
    {
        var results = ImmutableArray.CreateBuilder<CheckResult>();
        foreach (var (name, value) in Pairs(given, "--check", "hold=falls"))
        {
            if (!Known([name], model.Checks.Select(c => c.Id.Value), "--check", "check", "unknown-check").Any())
                continue;
            var outcomes = model.Checks.First(c => c.Id.Value == name).Outcomes.Select(o => o.Id).ToList();
            if (results.Any(r => r.Check.Value == name))
                found.Add(Usage("--check", $"{name} stands there twice", "give each check one outcome"));
            else if (outcomes.Contains(value, StringComparer.Ordinal))
                results.Add(new(new(name), value));
            else
                found.Add(Usage("--check", $"the check '{name}' has no outcome '{value}'", $"write one of {string.Join(", ", outcomes)}"));
        }

        return results.ToImmutable();
    }

    private ImmutableArray<Reading> Readings(string[] given)
    {
        var readings = ImmutableArray.CreateBuilder<Reading>();
        foreach (var (name, value) in Pairs(given, "--measured", "advance-time=4.1s"))
        {
            if (QuickMeasurement.AllReadings.FirstOrDefault(r => r.Name == name) is not { } reading)
                found.Add(Usage("--measured", $"no measurement is called '{name}'", NearName.Find(name, QuickMeasurement.AllReadings.Select(r => r.Name)) is { } near ? $"write {near}" : $"write one of {string.Join(", ", QuickMeasurement.AllReadings.Select(r => r.Name))}"));
            else if (readings.Any(r => r.Name == name))
                found.Add(Usage("--measured", $"{name} stands there twice", "give each measurement one value"));
            else if ((reading.Dimension is { } dimension ? QuantityReader.Read(value, dimension) : QuantityReader.ReadPlain(value)) is TextReading<double>.Good { Value: > 0 and var si })
                readings.Add(new(name, si));
            else
                found.Add(Usage("--measured", $"'{value}' is no value for {name}", $"write a value above zero with its unit, such as {name}={reading.Example}"));
        }

        foreach (var measurement in QuickMeasurement.All.Where(m => readings.Any(r => m.Readings.Any(n => n.Name == r.Name)) && !m.Readings.All(n => readings.Any(r => r.Name == n.Name))))
        {
            var lacking = measurement.Readings.First(n => readings.All(r => r.Name != n.Name));
            found.Add(Usage("--measured", $"{measurement.Id} wants {lacking.Name} as well", $"add {lacking.Name}={lacking.Example}: {lacking.Meaning}"));
        }

        return readings.ToImmutable();
    }

    private IEnumerable<(string Name, string Value)> Pairs(string[] given, string option, string example)
    {
        foreach (var word in Words(given))
        {
            var equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals > 0)
                yield return (word[..equals].Trim(), word[(equals + 1)..].Trim());
            else
                found.Add(Usage(option, $"'{word}' has no value", $"write a name, = and a value, such as {example}"));
        }
    }

    private IEnumerable<string> Known(string[] given, IEnumerable<string> names, string option, string kind, string code)
    {
        var known = names.ToList();
        var taken = new List<string>();
        foreach (var word in Words(given).Distinct(StringComparer.Ordinal))
        {
            if (known.Contains(word, StringComparer.Ordinal))
                taken.Add(word);
            else
                found.Add(new(Place.Whole(option), $"{model.Tool.Id} has no {kind} '{word}'", NearName.Find(word, known) is { } near ? $"write {near}" : $"write one of {string.Join(", ", known)}", code));
        }

        return taken;
    }

    private static IEnumerable<string> Words(string[] given) => given.SelectMany(g => g.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");
}
