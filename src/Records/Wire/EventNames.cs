using System.Collections.Frozen;
using Ramwright.Records.Events;
using Ramwright.Records.House;

namespace Ramwright.Records.Wire;

/// <summary>
/// The names and versions under which events are stored. They are independent of the types' names and never reused:
/// an event that changes beyond what an old text can still be read into gets the next version, and the old one stays here.
/// </summary>
public static class EventNames
{
    private static readonly FrozenDictionary<string, Type> TypeByName = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["job-opened/1"] = typeof(JobOpened),
        ["state-signed/1"] = typeof(StateSigned),
        ["finding-recorded/1"] = typeof(FindingRecorded),
        ["measurement-recorded/1"] = typeof(MeasurementRecorded),
        ["check-made/1"] = typeof(CheckMade),
        ["stroke-recorded/1"] = typeof(StrokeRecorded),
        ["as-found-read/1"] = typeof(AsFoundRead),
        ["targets-chosen/1"] = typeof(TargetsChosen),
        ["strip-planned/1"] = typeof(StripPlanned),
        ["quote-made/1"] = typeof(QuoteMade),
        ["quote-answered/1"] = typeof(QuoteAnswered),
        ["strip-step-signed/1"] = typeof(StripStepSigned),
        ["inspection-answered/1"] = typeof(InspectionAnswered),
        ["rebuild-planned/1"] = typeof(RebuildPlanned),
        ["rebuild-step-signed/1"] = typeof(RebuildStepSigned),
        ["note-written/1"] = typeof(NoteWritten),
        ["setting-peak-read/1"] = typeof(SettingPeakRead),
        ["relief-turned/1"] = typeof(ReliefTurned),
        ["relief-locked/1"] = typeof(ReliefLocked),
        ["series-opened/1"] = typeof(SeriesOpened),
        ["run-taken/1"] = typeof(RunTaken),
        ["run-voided/1"] = typeof(RunVoided),
        ["series-closed/1"] = typeof(SeriesClosed),
        ["sensor-compared/1"] = typeof(SensorCompared),
        ["friction-looped/1"] = typeof(FrictionLooped),
        ["tool-quarantined/1"] = typeof(ToolQuarantined),
        ["quarantine-lifted/1"] = typeof(QuarantineLifted),
        ["report-issued/1"] = typeof(ReportIssued),
        ["station-reached/1"] = typeof(StationReached),
        ["job-ended/1"] = typeof(JobEnded),
        ["entry-corrected/1"] = typeof(EntryCorrected),
        ["person-registered/1"] = typeof(PersonRegistered),
        ["customer-registered/1"] = typeof(CustomerRegistered),
        ["tool-registered/1"] = typeof(ToolRegistered),
        ["lot-opened/1"] = typeof(LotOpened),
        ["batch-received/1"] = typeof(BatchReceived),
        ["instrument-registered/1"] = typeof(InstrumentRegistered),
        ["instrument-calibrated/1"] = typeof(InstrumentCalibrated),
        ["settings-changed/1"] = typeof(SettingsChanged),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<Type, string> NameByType = TypeByName.ToFrozenDictionary(p => p.Value, p => p.Key);

    /// <summary>All stored names, in the order of the alphabet.</summary>
    public static IEnumerable<string> All => TypeByName.Keys.Order(StringComparer.Ordinal);

    /// <summary>The name under which an event of this type is written.</summary>
    /// <exception cref="ArgumentException">A bug: the type has no stored name.</exception>
    public static string Of(Type type) => NameByType.TryGetValue(type, out var name)
        ? name
        : throw new ArgumentException($"{type.Name} has no stored name; give it one in EventNames.", nameof(type));

    /// <summary>The type that reads a stored name; null for a name of a later program.</summary>
    public static Type? TypeOf(string name) => TypeByName.GetValueOrDefault(name);
}
