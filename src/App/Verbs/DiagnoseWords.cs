using System.Globalization;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Measurements;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>Evidence, reasons and acts in plain words.</summary>
internal sealed class DiagnoseWords(ServiceModel model)
{
    public static string Percent(double probability) => probability switch
    {
        < 0.0005 => "< 0.1 %",
        < 0.0995 => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0.0} %"),
        > 0.9995 => "> 99.9 %",
        > 0.995 => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0.0} %"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };

    public static string KindOf(ServiceAct act) => act switch
    {
        ServiceAct.MakeCheck => "check",
        ServiceAct.Measure => "measure",
        ServiceAct.Repair => "repair",
        ServiceAct.RunIt => "run",
        _ => "stop",
    };

    public static string? IdOf(ServiceAct act) => act switch
    {
        ServiceAct.MakeCheck check => check.Check.Value,
        ServiceAct.Measure measure => measure.Measurement,
        ServiceAct.Repair repair => repair.Remedy.Value,
        _ => null,
    };

    public string Of(ServiceAct act) => act switch
    {
        ServiceAct.MakeCheck check => CheckOf(check.Check).Name,
        ServiceAct.Measure measure => MeasurementOf(measure.Measurement).Name,
        ServiceAct.Repair repair => model.Remedies.First(r => r.Id == repair.Remedy).Name,
        ServiceAct.RunIt => "close the tool and run it behind the guard",
        _ => "stop: nothing left here is worth its cost; send it out or retire it",
    };

    public string Of(Datum datum) => datum switch
    {
        Datum.Seen seen => SymptomOf(seen.Symptom).Name,
        Datum.NotSeen not => $"not there: {SymptomOf(not.Symptom).Name}",
        Datum.Checked made => $"{CheckOf(made.Check).Name}: {CheckOf(made.Check).Outcomes.First(o => o.Id == made.Outcome).Name}",
        Datum.Measured measured => $"{measured.Measurement.Replace('-', ' ')} {Value(measured)}",
        _ => "the recording",
    };

    /// <summary>A reason with how far it moved the odds.</summary>
    public string Of(Reason reason) => string.Create(CultureInfo.InvariantCulture,
        $"{(reason.LogOdds > 0 ? "for it" : "against")}, odds {(reason.LogOdds > 0 ? "×" : "÷")} {Math.Exp(Math.Abs(reason.LogOdds)):0.#}: {Of(reason.Datum)}");

    public string Why(FaultReport report, Advice advice)
    {
        if (advice.Next.Act is ServiceAct.Repair repair)
        {
            var mends = model.Remedies.First(r => r.Id == repair.Remedy).Mends;
            var mended = report.Faults.Where(f => mends.Any(m => m.Fault == f.Fault)).OrderByDescending(f => f.Probability).First();
            return $"it mends '{mended.Name}' ({Percent(mended.Probability)}); with {Percent(advice.Next.Chance ?? 0)} the complaint is gone after it alone";
        }

        if (advice.Looks.FirstOrDefault(l => l.Act == advice.Next.Act) is { } look)
        {
            var outcomes = look.Outcomes.OrderByDescending(o => o.Probability).Take(3)
                .Select(o => $"'{o.Name}' ({Percent(o.Probability)}) would point to {(o.Likeliest is { } fault ? report.Faults.First(f => f.Fault == fault).Name : "a sound tool")} with {Percent(o.LikeliestProbability)}");
            return string.Join("; ", outcomes);
        }

        return advice.Next.Act is ServiceAct.RunIt
            ? report.NothingSpeaks ? "nothing that is known speaks for a fault; a run and the proof show the rest" : $"with {Percent(advice.Next.Chance ?? 0)} what was complained of does not come back"
            : "what is left costs more than it would mend";
    }

    private static string Value(Datum.Measured measured) => measured.Measurement switch
    {
        "advance-time" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.0#} s"),
        "opening" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value / 1e5:0} bar"),
        "no-load-current" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.#} A"),
        "pack-resistance" => string.Create(CultureInfo.InvariantCulture, $"{measured.Value * 1e3:0} mΩ"),
        "hold" => string.Create(CultureInfo.InvariantCulture, $"falls by {100 * measured.Value:0.#} % in a minute"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{measured.Value:0.##}"),
    };

    private static QuickMeasurement MeasurementOf(string id) => QuickMeasurement.All.First(m => m.Id == id);

    private Check CheckOf(CheckId id) => model.Checks.First(c => c.Id == id);

    private Symptom SymptomOf(SymptomId id) => model.Symptoms.First(s => s.Id == id);
}
