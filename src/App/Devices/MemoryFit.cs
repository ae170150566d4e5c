using System.Globalization;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Text;
using Ramwright.Proving.Reference;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>Whether the tool's own memory may measure its proof: only after its sensor was compared with a reference at this visit and found fit.</summary>
public static class MemoryFit
{
    /// <summary>What a form calls the tool's memory.</summary>
    public const string Value = "memory";

    private const string Name = "The tool's own memory";

    public static DeviceFit Of(JobState job, ServiceModel model, Circumstances at)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(model);
        if (job.Comparison is not { What: var compared })
            return new DeviceFit.Unfit($"{Name} was not compared with a reference at this visit, or the tool was opened since: what it shows proves nothing.");
        if (compared.Examine() is not SensorAnswer.Fit { Figures: var figures })
            return new DeviceFit.Unfit($"{Name} was compared with {compared.Reference} at this visit and not found fit.");
        if (model.Behaviour?.SensorResponse is not { } response)
            return new DeviceFit.Unfit($"{Name} cannot prove this tool: the model does not say how fast its sensor is (sensor-response), so nobody knows how much of a peak it misses.");
        var limits = model.Limits.Pressure;
        if (ComparedReading.Of(compared.Points, compared.Task, figures, limits.Min.Pascals, limits.Max.Pascals) is not CalibratedReading.Known known)
        {
            var (low, high) = (compared.Points.Min(p => p.Reference) / 1e5, compared.Points.Max(p => p.Reference) / 1e5);
            return new DeviceFit.Unfit(string.Create(CultureInfo.InvariantCulture, $"{Name} was compared from {low:0.#} to {high:0.#} bar; the limits of this tool, {QuantityText.Show(limits, UnitSystem.Metric)}, lie beyond."));
        }

        return DeviceFit.Examine(new DeviceBudget
        {
            Kind = ReferenceKind.ToolMemory,
            ComparedAtThisVisit = true,
            Reading = known.Components,
            TimeConstant = response,
            Correction = ReadingCorrection.Of(known.Line!, null),
        }, Name, model, at);
    }
}
