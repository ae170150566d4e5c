using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>Likely faults and the next act, in words and as JSON.</summary>
internal static class DiagnoseAnswer
{
    private const double Shown = 0.02;

    public static Answer Of(ServiceModel model, FaultReport report, Advice advice)
    {
        var words = new DiagnoseWords(model);
        return new(Exit.Yes, Text(words, report, advice), new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["exact"] = report.IsExact,
            ["nothingSpeaks"] = report.NothingSpeaks,
            ["sound"] = report.SoundProbability,
            ["faults"] = new JsonArray([.. report.Faults.Select(f => Fault(words, f))]),
            ["sets"] = new JsonArray([.. report.Sets.Select(s => new JsonObject { ["faults"] = new JsonArray([.. s.Faults.Select(f => JsonValue.Create(f.Value))]), ["probability"] = s.Probability })]),
            ["next"] = Next(words, report, advice),
            ["expectedCost"] = advice.ExpectedCost.Amount,
            ["gap"] = advice.Gap.Amount,
            ["currency"] = advice.ExpectedCost.Currency,
            ["others"] = new JsonArray([.. advice.Others.Select(o => Priced(words, o))]),
            ["looks"] = new JsonArray([.. advice.Looks.Select(l => Look(words, l))]),
            ["leftOut"] = new JsonArray([.. report.LeftOut.Select(l => new JsonObject { ["datum"] = words.Of(l.LeftOut), ["countedWith"] = words.Of(l.Finer) })]),
        });
    }

    public static Answer Contradictory(ServiceModel model, ImmutableArray<Datum> conflict)
    {
        var words = new DiagnoseWords(model);
        var together = string.Join("; ", conflict.Select(words.Of));
        return new(Exit.Undecided, $"contradictory: by the model of the {model.Tool.Name} these cannot be together: {together}\n  look again at each of them, or mend the model", new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["contradictory"] = new JsonArray([.. conflict.Select(d => JsonValue.Create(words.Of(d)))]),
        });
    }

    private static string Text(DiagnoseWords words, FaultReport report, Advice advice)
    {
        var text = new StringBuilder();
        var top = report.Faults[0];
        text.Append(report.NothingSpeaks ? "nothing here speaks for a fault" : string.Create(CultureInfo.InvariantCulture, $"likeliest: {top.Name}, {DiagnoseWords.Percent(top.Probability)}"));
        if (!report.IsExact)
            text.Append(" (not exact: bounds beside each)");
        text.Append("\n\n");
        foreach (var fault in report.Faults.Where((f, i) => i < 8 && f.Probability >= Shown && (f.Probability > 1.05 * f.Rate || i < 3)))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {DiagnoseWords.Percent(fault.Probability),5}  {fault.Name}");
            if (!report.IsExact)
                text.Append(CultureInfo.InvariantCulture, $" ({DiagnoseWords.Percent(fault.Low)} to {DiagnoseWords.Percent(fault.High)})");
            text.Append(CultureInfo.InvariantCulture, $"; {DiagnoseWords.Percent(fault.Rate)} of tools sent in\n");
            foreach (var reason in fault.Reasons.Take(3))
                text.Append("         ").Append(words.Of(reason)).Append('\n');
        }

        foreach (var left in report.LeftOut)
            text.Append("  counted once: ").Append(words.Of(left.LeftOut)).Append(", as ").Append(words.Of(left.Finer)).Append('\n');
        text.Append("\nnext: ").Append(words.Of(advice.Next.Act)).Append(CultureInfo.InvariantCulture, $" ({advice.Next.Time.TotalMinutes:0} min, {advice.Next.Price.Rounded()})\n");
        if (!advice.AlongWithIt.IsEmpty)
            text.Append("  in the same opening: ").Append(string.Join("; ", advice.AlongWithIt.Select(words.Of))).Append('\n');
        text.Append("  why: ").Append(words.Why(report, advice)).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"  {advice.ExpectedCost.Rounded()} on average until it works{(advice.Gap.Amount > 0 ? $"; no way can save more than {advice.Gap.Rounded()} of it" : "; no way is cheaper")}\n");
        foreach (var look in advice.Looks.Where(l => l.Act != advice.Next.Act && l.Saves.Amount > l.Price.Amount).Take(3))
            text.Append(CultureInfo.InvariantCulture, $"  also worth it: {words.Of(look.Act)} ({look.Time.TotalMinutes:0} min, {look.Price.Rounded()}; saves {look.Saves.Rounded()} on average)\n");
        return text.ToString().TrimEnd('\n');
    }

    private static JsonObject Fault(DiagnoseWords words, RankedFault fault) => new()
    {
        ["id"] = fault.Fault.Value,
        ["name"] = fault.Name,
        ["probability"] = fault.Probability,
        ["low"] = fault.Low,
        ["high"] = fault.High,
        ["rate"] = fault.Rate,
        ["reasons"] = new JsonArray([.. fault.Reasons.Select(r => new JsonObject { ["datum"] = words.Of(r.Datum), ["logOdds"] = Math.Round(r.LogOdds, 4) })]),
    };

    private static JsonObject Next(DiagnoseWords words, FaultReport report, Advice advice)
    {
        var next = Priced(words, advice.Next);
        next["why"] = words.Why(report, advice);
        next["alongWithIt"] = new JsonArray([.. advice.AlongWithIt.Select(a => JsonValue.Create(DiagnoseWords.IdOf(a)))]);
        return next;
    }

    private static JsonObject Priced(DiagnoseWords words, PricedAct priced) => new()
    {
        ["act"] = DiagnoseWords.KindOf(priced.Act),
        ["id"] = DiagnoseWords.IdOf(priced.Act),
        ["action"] = words.Of(priced.Act),
        ["minutes"] = Minutes(priced.Time),
        ["price"] = priced.Price.Amount,
        ["expectedCost"] = priced.ExpectedCost.Amount,
        ["chance"] = priced.Chance,
        ["opens"] = new JsonArray([.. priced.Opens.Select(n => JsonValue.Create(n.Value))]),
    };

    private static JsonObject Look(DiagnoseWords words, LookWorth look) => new()
    {
        ["act"] = DiagnoseWords.KindOf(look.Act),
        ["id"] = DiagnoseWords.IdOf(look.Act),
        ["action"] = words.Of(look.Act),
        ["minutes"] = Minutes(look.Time),
        ["price"] = look.Price.Amount,
        ["saves"] = look.Saves.Amount,
        ["bits"] = Math.Round(look.Bits, 4),
        ["outcomes"] = new JsonArray([.. look.Outcomes.Select(o => new JsonObject { ["id"] = o.Id, ["name"] = o.Name, ["probability"] = o.Probability, ["likeliest"] = o.Likeliest?.Value, ["likeliestProbability"] = o.LikeliestProbability })]),
    };

    private static double Minutes(TimeSpan time) => Math.Round(time.TotalMinutes, 2);
}
