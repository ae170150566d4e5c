using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Web.Parts;
using Ramwright.Instruments.Connections;
using Ramwright.Metrology.Calibration;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.House.Instruments;

/// <summary>An instrument and its certificate, as they were typed.</summary>
public sealed class CalibrationForm
{
    public string? Id { get; set; }
    public string? Name { get; set; }
    public string? Kind { get; set; }
    public string? Serial { get; set; }
    public string? Range { get; set; }
    public string? Resolution { get; set; }

    /// <summary>Time constant and time between two samples, milliseconds.</summary>
    public string? Response { get; set; }
    public string? Sampling { get; set; }
    public string? On { get; set; }
    public string? Due { get; set; }
    public string? Certificate { get; set; }
    public string? Laboratory { get; set; }
    public string? Expanded { get; set; }
    public string? AsFound { get; set; }
    public string? Unit { get; set; } = "bar";

    /// <summary>Points of the certificate, one a line: reading, reference and, if stated, the standard uncertainty of that comparison.</summary>
    public string? Points { get; set; }

    public string? Curve { get; set; }
    public string? Adjusted { get; set; }

    /// <summary>Drift in a year and change for each kelvin, in the unit of the uncertainty.</summary>
    public string? Drift { get; set; }
    public string? PerKelvin { get; set; }

    /// <summary>How it is reached: <c>hand</c>, <c>simulated</c>, or a line as in docs/reference/instrument-connections.md.</summary>
    public string? Connection { get; set; }

    /// <summary>The form of an instrument that is in the register; its new certificate is still to be written.</summary>
    public static CalibrationForm Of(InstrumentState known)
    {
        ArgumentNullException.ThrowIfNull(known);
        var facts = known.Facts;
        var unit = Figures.Units.First(u => u.Kind == facts.Reads);
        return new CalibrationForm
        {
            Id = facts.Instrument.Value,
            Name = facts.Name,
            Kind = facts.Kind.ToString(),
            Serial = facts.SerialNumber,
            Range = Plain(facts.Range, unit),
            Resolution = Plain(facts.Resolution, unit),
            Response = Milliseconds(facts.Response),
            Sampling = Milliseconds(facts.SamplingInterval),
            Unit = unit.Symbol,
            Connection = facts.Connection,
            Drift = Plain(known.Calibration?.DriftPerYear, unit with { Offset = 0 }),
            PerKelvin = Plain(known.Calibration?.PerKelvin, unit with { Offset = 0 }),
            Curve = known.Calibration?.Curve == CurveForm.Quadratic ? "quadratic" : null,
        };
    }

    /// <summary>The events, or null with every mistake noted. What the form leaves empty stays as the register has it.</summary>
    public IReadOnlyList<HouseEvent>? Read(HouseState house, FormMistakes mistakes)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(mistakes);
        if (!InstrumentId.TryParse(Id?.Trim(), out var id))
            mistakes.Add("Id", "The inventory number is missing or cannot be one.", $"Write {InstrumentId.Form}, such as FC-2.");
        if (string.IsNullOrWhiteSpace(Name))
            mistakes.Add("Name", "Say what it is called in the house.", "Such as: force cell 100 kN.");
        if (!Enum.TryParse<InstrumentKind>(Kind, out var kind) || !Enum.IsDefined(kind))
            mistakes.Add("Kind", "Choose its kind.");
        var on = Day(On, "On", "The day of calibration", mistakes);
        var due = Day(Due, "Due", "The last day on which it is relied on", mistakes);
        if (on is { } from && due is { } to && to <= from)
            mistakes.Add("Due", "The last day is not after the day of calibration.", "Look at the certificate again.");
        if (string.IsNullOrWhiteSpace(Certificate))
            mistakes.Add("Certificate", "The number of the certificate is missing.");
        if (string.IsNullOrWhiteSpace(Laboratory))
            mistakes.Add("Laboratory", "Say who calibrated it.");
        var expanded = Figures.Read(Expanded, Unit ?? "bar", "Expanded", mistakes);
        if (expanded is { Si: <= 0 })
            mistakes.Add("Expanded", "The uncertainty is not above zero.", "Write U with k = 2 as the certificate states it.");
        var (range, resolution) = (Above("Range", Range, expanded, mistakes), Above("Resolution", Resolution, expanded, mistakes));
        var (response, sampling) = (Time("Response", Response, mistakes), Time("Sampling", Sampling, mistakes));
        var (drift, perKelvin) = (Change("Drift", Drift, expanded, mistakes), Change("PerKelvin", PerKelvin, expanded, mistakes));
        var points = CertificatePoints.Read(Points, Unit ?? "bar", expanded, mistakes);
        var connection = ReadConnection(house, id, mistakes);
        if (mistakes.Count > 0)
            return null;
        var known = house.Find(id)?.Facts ?? new InstrumentRegistered(id, Name!.Trim(), kind, expanded!.Value.Kind);
        return
        [
            known with
            {
                Name = Name!.Trim(),
                Kind = kind,
                Reads = expanded!.Value.Kind,
                SerialNumber = string.IsNullOrWhiteSpace(Serial) ? known.SerialNumber : Serial.Trim(),
                Range = range ?? known.Range,
                Resolution = resolution ?? known.Resolution,
                Response = response ?? known.Response,
                SamplingInterval = sampling ?? known.SamplingInterval,
                Connection = connection ?? known.Connection,
            },
            new InstrumentCalibrated(id, on!.Value, due!.Value, Certificate!.Trim(), Laboratory!.Trim(), expanded.Value)
            {
                AsFoundWithin = AsFound switch { "within" => true, "off" => false, _ => null },
                DriftPerYear = drift,
                PerKelvin = perKelvin,
                Points = points is { IsEmpty: false } ? points : null,
                Curve = points is { IsEmpty: false } ? (Curve == "quadratic" ? CurveForm.Quadratic : CurveForm.Straight) : null,
                Adjusted = Adjusted switch { "yes" => true, "no" => false, _ => null },
            },
        ];
    }

    /// <summary>A connection that reads; null where none was written, so that the register's stays.</summary>
    private string? ReadConnection(HouseState house, InstrumentId id, FormMistakes mistakes)
    {
        var text = Connection?.Trim();
        if (string.IsNullOrEmpty(text))
            return null;
        if (text == LiveBench.ByHand || (text == SimulatedBench.Connection && house.Find(id)?.Facts.Connection == SimulatedBench.Connection))
            return text;
        if (text == SimulatedBench.Connection)
        {
            mistakes.Add("Connection", "A simulated instrument reads no tool that exists.", "Write hand, or how it is reached.");
            return null;
        }

        if (ConnectionText.Read("connection", text) is ConnectionAnswer.Refused refused)
        {
            foreach (var mistake in refused.Mistakes)
                mistakes.Add("Connection", Sentence.Of(mistake.What), Sentence.Of(mistake.Mend));
        }

        return text;
    }

    /// <summary>A change of the reading, zero or more; null where none was written.</summary>
    private MeasuredValue? Change(string field, string? text, MeasuredValue? expanded, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(text) || Figures.Read(text, Unit ?? "bar", field, mistakes) is not { } read)
            return null;
        if (expanded is { } of && of.Kind != read.Kind)
            mistakes.Add(field, "That is another quantity than the uncertainty below.", $"Write it in {Unit}.");
        return new MeasuredValue(read.Kind, Math.Abs(read.Si));
    }

    private MeasuredValue? Above(string field, string? text, MeasuredValue? expanded, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(text) || Figures.Read(text, Unit ?? "bar", field, mistakes) is not { } read)
            return null;
        if (read.Si <= 0)
            mistakes.Add(field, "That is not above zero.", "Write it as the maker states it, or leave it empty.");
        else if (expanded is { } of && of.Kind != read.Kind)
            mistakes.Add(field, "That is another quantity than the uncertainty below.", $"Write it in {Unit}.");
        return read;
    }

    private static TimeSpan? Time(string field, string? text, FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        if (double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var ms) && ms is >= 0 and <= 60_000)
            return TimeSpan.FromMilliseconds(ms);
        mistakes.Add(field, $"'{text.Trim()}' is no time of a measuring device.", "Write milliseconds, such as 0.5, or leave it empty.");
        return null;
    }

    /// <summary>Without a sign between thousands, which a form would take for a decimal comma.</summary>
    private static string? Plain(MeasuredValue? value, FormUnit unit) =>
        value is { } v ? ((v.Si - unit.Offset) / unit.Factor).ToString("0.######", CultureInfo.InvariantCulture) : null;

    private static string? Milliseconds(TimeSpan? time) => time?.TotalMilliseconds.ToString("0.###", CultureInfo.InvariantCulture);

    private static DateOnly? Day(string? text, string field, string what, FormMistakes mistakes)
    {
        if (DateOnly.TryParseExact(text?.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return day;
        mistakes.Add(field, $"{what} is missing or is no day.", "Write it as 2026-08-27.");
        return null;
    }
}
