using System.Security.Cryptography;
using System.Text;
using Ramwright.Instruments.Devices;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.App.Devices;

/// <summary>
/// Devices that exist in the program alone, for practice and the demo. Each job has a made-up tool behind its device, hidden and always the
/// same for the same job: it was found low, its screw answers nearly as the model says, and its runs scatter by a quarter of a percent.
/// </summary>
/// <param name="pace">How many times faster than life the runs come; infinity for no waiting.</param>
public sealed class SimulatedBench(TimeProvider clock, double pace)
{
    public const string Connection = "simulated";

    /// <summary>The device of this job, where it stands now; null when the instrument is not a simulated one or cannot read this tool.</summary>
    public IPeakDevice? DeviceFor(JobState job, ServiceModel model, InstrumentState instrument)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.Facts.Connection != Connection || InstrumentDevice.Describe(instrument, model) is not { } description)
            return null;
        var seed = SeedOf(job.Id.Value);
        var runsBefore = job.Setting.Runs.Count + job.AsFound.Sum(a => a.What.Peaks.Length) + job.Series.Sum(s => s.Runs.Count);
        return new SimulatedDevice(ToolBehind(model, seed), description, seed, clock, pace, runsBefore, job.Setting.Screw);
    }

    private static SimulatedTool ToolBehind(ServiceModel model, int seed)
    {
        var chance = new Random(seed);
        var nominal = model.Limits.Nominal;
        var gain = SettingAdvisor.Advise(model, []).PriorBarPerTurn;
        return new SimulatedTool
        {
            AsFound = (0.86 + 0.06 * chance.NextDouble()) * nominal,
            BarPerTurn = gain * (0.9 + 0.2 * chance.NextDouble()),
            Scatter = 0.0025 * nominal,
            Rest = model.Limits.Rest,
        };
    }

    private static int SeedOf(string job) => BitConverter.ToInt32(SHA256.HashData(Encoding.UTF8.GetBytes(job))) & int.MaxValue;
}
