using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning;

/// <summary>What time costs in this shop, and how times scatter. Settings of the house; a model may be more exact for its own tools and postures.</summary>
public sealed record Rates
{
    public required Money LabourPerHour { get; init; }

    /// <summary>Fetching another tool, where the model gives no time of its own.</summary>
    public TimeSpan ToolChange { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Turning the work into another posture, where the model gives no time of its own.</summary>
    public TimeSpan PostureChange { get; init; } = TimeSpan.FromSeconds(45);

    /// <summary>Priming, filling and bleeding right after a fit, where the model gives no time of its own. From judgement.</summary>
    public TimeSpan Priming { get; init; } = TimeSpan.FromMinutes(1);

    public TimeSpan Filling { get; init; } = TimeSpan.FromMinutes(1);

    public TimeSpan Bleeding { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>Relative standard deviation of one step's time, where the model gives none; independent from step to step.</summary>
    public double StepSpread { get; init; } = 0.30;

    /// <summary>Relative standard deviation of the factor that technician and tool put on every step alike.</summary>
    public double SharedSpread { get; init; } = 0.20;

    /// <summary>Time to fetch a tool when another was in hand.</summary>
    public TimeSpan ChangeTime(ServiceModel model, ToolId tool) => model.FindTool(tool)?.Change ?? ToolChange;

    /// <summary>Time to turn the work into a posture.</summary>
    public TimeSpan ChangeTime(ServiceModel model, PostureId posture) =>
        model.Postures.FirstOrDefault(p => p.Id == posture)?.Change ?? PostureChange;

    /// <summary>What <paramref name="time"/> costs, unrounded.</summary>
    public Money CostOf(TimeSpan time) => new(LabourPerHour.Amount * time.Ticks / TimeSpan.TicksPerHour, LabourPerHour.Currency);
}
