using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Live;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>Instruments of the register that are read live, by the connection that stands with them.</summary>
public static class LiveBench
{
    /// <summary>The register's word for an instrument whose peaks are written by hand.</summary>
    public const string ByHand = "hand";

    /// <summary>Whether this connection is one that the bench can run by itself: simulated, or live and without mistakes.</summary>
    public static bool Runs(string connection) => connection == SimulatedBench.Connection || Find(connection) is Connection.Polled or Connection.Folder;

    /// <summary>The device of an open series; null when the instrument is not a live one or cannot read this tool.</summary>
    public static IPeakDevice? DeviceFor(JobState job, ServiceModel model, InstrumentState instrument, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(instrument);
        return Find(instrument.Facts.Connection) is { } connection and not Connection.Simulated && InstrumentDevice.Describe(instrument, model) is { } description
            ? LiveDevices.Find(connection, description, SettingOf(model, job.OpenSeries?.Peaks.Length ?? 0, job.OpenSeries?.Opened.What.Reference?.Correction), clock)
            : null;
    }

    /// <summary>What a model says about live readings: half its lower limit makes a run full, and its ram turns forces into pressures.</summary>
    /// <param name="fixedAtOpening">How the open series turns forces into pressures; null: as the model says.</param>
    public static LiveSetting SettingOf(ServiceModel? model, int runsBefore, ReadingCorrection? fixedAtOpening = null)
    {
        if (model is null)
            return new LiveSetting { RunsBefore = runsBefore };
        var force = RamForce.Of(model);
        return new LiveSetting
        {
            Full = 0.5 * model.Limits.Pressure.Min,
            RamArea = fixedAtOpening?.RamArea ?? force?.Area,
            ForceHeldBack = fixedAtOpening?.HeldBack ?? force?.HeldBack ?? default,
            RunsBefore = runsBefore,
        };
    }

    private static Connection? Find(string text) => text != ByHand && ConnectionText.Read("connection", text) is ConnectionAnswer.Read read ? read.Connection : null;
}
