using System.Globalization;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Measurements;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>Data, reasons and acts of diagnosis in plain words.</summary>
public sealed class FindWords(ServiceModel model, Words words)
{
    /// <summary>One thing known, such as 'rattles like gravel: not so'.</summary>
    public string Say(Datum datum) => datum switch
    {
        Datum.Seen seen => NameOf(seen.Symptom),
        Datum.NotSeen not => $"{NameOf(not.Symptom)}: not so",
        Datum.Checked made => $"{NameOf(made.Check)}: {model.Checks.First(c => c.Id == made.Check).Outcomes.First(o => o.Id == made.Outcome).Name}",
        Datum.Measured measured => Say(measured),
        _ => "the recording",
    };

    /// <summary>How far a datum moved a fault: '12 times likelier by: …'.</summary>
    public string Say(Reason reason) => $"{Times(reason.LogOdds)} by: {Say(reason.Datum)}";

    public string Do(ServiceAct act) => act switch
    {
        ServiceAct.MakeCheck check => Sentence.Head(NameOf(check.Check)),
        ServiceAct.Measure measure => Sentence.Head(QuickMeasurement.All.First(m => m.Id == measure.Measurement).Name),
        ServiceAct.Repair repair => Sentence.Head(model.Remedies.First(r => r.Id == repair.Remedy).Name),
        ServiceAct.RunIt => "Close the tool and run it",
        _ => "Leave it: nothing that is left to do is worth its cost",
    };

    /// <summary>Minutes and money of an act: '4 min · 5.60 EUR'.</summary>
    public static string Takes(TimeSpan time, Money price) => $"{TimeText.Show(time)} · {price}";

    public static string Percent(double probability) => probability switch
    {
        < 0.01 => "below 1 %",
        > 0.99 => "above 99 %",
        _ => probability.ToString("0 %", CultureInfo.InvariantCulture),
    };

    private static string Times(double logOdds)
    {
        var factor = Math.Exp(Math.Abs(logOdds));
        var text = factor > 1000 ? "more than 1000" : factor.ToString(factor < 3 ? "0.#" : "0", CultureInfo.InvariantCulture);
        return $"{text} times {(logOdds > 0 ? "likelier" : "less likely")}";
    }

    private string Say(Datum.Measured measured)
    {
        var measurement = QuickMeasurement.All.First(m => m.Id == measured.Measurement);
        var value = measurement.Id switch
        {
            "hold" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.#%} lost"),
            "pack-resistance" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value * 1e3:0} mΩ"),
            "opening" => words.Show(Pressure.FromPascals(measured.Value)),
            "no-load-current" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.#} A"),
            "strokes-per-charge" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0} strokes"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.0} s"),
        };
        return $"{measurement.Id.Replace('-', ' ')} {value}";
    }

    private string NameOf(SymptomId id) => model.Symptoms.FirstOrDefault(s => s.Id == id)?.Name ?? id.Value;

    private string NameOf(CheckId id) => model.Checks.FirstOrDefault(c => c.Id == id)?.Name ?? id.Value;
}
