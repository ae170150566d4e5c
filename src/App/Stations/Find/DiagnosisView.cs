using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Diagnosis.Actions;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>A fault as the page ranks it.</summary>
/// <param name="Width">Length of its bar, 0 to 100.</param>
/// <param name="Was">Where its bar would end by its rate alone, 0 to 100.</param>
/// <param name="Reasons">What moved it most, in words.</param>
public sealed record LikelyFault(string Name, string Percent, double Width, double Was, ImmutableArray<string> Reasons);

/// <summary>The next act as the page offers it.</summary>
/// <param name="Link">Where it is done; null where nothing is done here.</param>
public sealed record NextStep(string Name, string Takes, string Why, string? Link, string Button)
{
    /// <summary>What a look would tell: each outcome and where it leads.</summary>
    public ImmutableArray<string> Outcomes { get; init; } = [];
}

/// <summary>What Find shows of a diagnosis.</summary>
public sealed record DiagnosisView(ServiceModel Model, JobId Job, Words Words, Diagnosed Answer)
{
    private const int MostShown = 5, MostReasons = 3;
    private const double LeastShown = 0.03, MovedBy = 1.2;

    private readonly FindWords say = new(Model, Words);

    /// <summary>The likeliest fault, and others that something speaks for, most first.</summary>
    public ImmutableArray<LikelyFault> Faults => Answer is Diagnosed.Weighed { Report: var report }
        ? [.. report.Faults.Where((f, i) => i == 0 || (f.Probability >= LeastShown && f.Probability > MovedBy * f.Rate)).Take(MostShown).Select(f => new LikelyFault(Sentence.Head(f.Name), FindWords.Percent(f.Probability), 100 * f.Probability, 100 * f.Rate, [.. f.Reasons.Take(MostReasons).Select(say.Say)]))]
        : [];

    /// <summary>Nothing that was found speaks for a fault.</summary>
    public bool NothingSpeaks => Answer is Diagnosed.Weighed { Report.NothingSpeaks: true };

    /// <summary>What was left out because something finer tells the same.</summary>
    public ImmutableArray<string> LeftOut => Answer is Diagnosed.Weighed { Report: var report }
        ? [.. report.LeftOut.Select(l => $"{say.Say(l.LeftOut)} is not counted beside {say.Say(l.Finer)}: they tell the same")]
        : [];

    /// <summary>What cannot be together.</summary>
    public ImmutableArray<string> Conflict => Answer is Diagnosed.Contradictory { Conflict: var conflict } ? [.. conflict.Select(say.Say)] : [];

    public NextStep? Next => Answer is Diagnosed.Weighed { Advice: var advice } ? Step(advice.Next, advice) : null;

    /// <summary>Other ways to go on, in words.</summary>
    public ImmutableArray<NextStep> Others => Answer is Diagnosed.Weighed { Advice: var advice } ? [.. advice.Others.Where(o => o.Act is not ServiceAct.Stop).Take(3).Select(o => Step(o, advice))] : [];

    private NextStep Step(PricedAct act, Advice advice)
    {
        var find = $"/jobs/{Job}/find/";
        var takes = FindWords.Takes(act.Time, act.Price);
        return act.Act switch
        {
            ServiceAct.MakeCheck check => new(say.Do(act.Act), takes, "", find + "check/" + check.Check, "Make this check") { Outcomes = Tells(act, advice) },
            ServiceAct.Measure measure => new(say.Do(act.Act), takes, "", find + "measure#" + measure.Measurement, "Measure it") { Outcomes = Tells(act, advice) },
            ServiceAct.Repair repair => new(say.Do(act.Act), takes, act.Chance is { } chance ? $"Mends the tool with {FindWords.Percent(chance)}" : "", find + "decide?remedy=" + repair.Remedy, "Work on this"),
            ServiceAct.RunIt => new(say.Do(act.Act), takes, act.Chance is { } sound ? $"It runs well with {FindWords.Percent(sound)}" : "", find + "decide", "Nothing to strip"),
            _ => new(say.Do(act.Act), "", "What could still be wrong costs more to find and mend than the tool is worth here", null, ""),
        };
    }

    private ImmutableArray<string> Tells(PricedAct act, Advice advice) => advice.Looks.FirstOrDefault(l => l.Act == act.Act) is { } look
        ?
        [
            .. look.Outcomes.Where(o => o.Probability >= 0.02).OrderByDescending(o => o.Probability).Take(3).Select(o =>
                $"{Sentence.Head(o.Name)} ({FindWords.Percent(o.Probability)}): {(o.Likeliest is { } fault ? Model.Faults.First(f => f.Id == fault).Name + ", " + FindWords.Percent(o.LikeliestProbability) : "likeliest nothing is wrong")}"),
        ]
        : [];
}
