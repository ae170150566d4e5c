using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>Writes out a rebuild from its acts, in order: steps with torque, lubricant, what goes in new, oil, times.</summary>
internal sealed class RebuildPlanWriter(RebuildJob job)
{
    private readonly HashSet<NodeId> renewed = [.. job.Renewals.Select(r => r.Part)];
    private readonly List<RebuildStep> steps = [];
    private ToolId? tool;
    private PostureId? posture;

    public RebuildPlan Write(IEnumerable<RebuildNode> acts, bool proven)
    {
        foreach (var act in acts)
            Add(act);
        var estimate = TimeEstimate.Of(
            steps.SelectMany(s => new[] { s.Time, s.ChangeTime }).Select(t => new WorkTime(t, job.Rates.StepSpread)), job.Rates.SharedSpread);
        return new RebuildPlan
        {
            Steps = [.. steps],
            Tools = [.. steps.Select(s => s.Tool).OfType<ToolId>().Distinct()],
            LikelyTime = estimate.Likely,
            SafeTime = estimate.Safe,
            Labour = job.Rates.CostOf(steps.Aggregate(TimeSpan.Zero, (sum, s) => sum + s.Time + s.ChangeTime)),
            OilFilled = Volume.FromMillilitres(steps.Sum(s => s.Oil?.Millilitres ?? 0)),
            ProvenOptimal = proven,
        };
    }

    private void Add(RebuildNode act)
    {
        var change = Change(act);
        switch (act)
        {
            case RebuildNode.PartIn part:
                AddPart(part.Part, part.Way, RebuildKind.FitPart, part.Alone, PartText(part), act, change);
                break;
            case RebuildNode.PartOnUnit part:
                AddPart(part.Part, part.Way, RebuildKind.MakeUpUnit, part.Unit, part.InPlace ? InPlaceText(part.Part) : Text(part.Part, part.Way), act, change);
                break;
            case RebuildNode.UnitIn unit:
                AddUnit(unit, change);
                break;
            case RebuildNode.StateEnded state:
                AddState(state, change);
                break;
        }
    }

    private void AddUnit(RebuildNode.UnitIn act, TimeSpan change) => steps.Add(new RebuildStep
    {
        Kind = RebuildKind.FitUnit,
        Unit = act.Unit.Id,
        Parts = [.. act.Members.Select(m => m.Id)],
        Operation = act.Unit.Operation is { Length: > 0 } own ? OperationText.Capital(own) : $"Fit the {act.Unit.Name} as one",
        Tool = act.Tool,
        Posture = act.Posture,
        Time = act.Time,
        ChangeTime = change,
        NewParts = [.. act.Members.Select(m => m.Id).Where(renewed.Contains)],
        Cautions = act.Unit.Cautions,
    });

    private void AddState(RebuildNode.StateEnded act, TimeSpan change) => steps.Add(new RebuildStep
    {
        Kind = KindOf(act.Undo.Kind),
        Node = act.State.Id,
        Operation = OperationText.Capital(act.Undo.Text),
        Tool = act.Tool,
        Posture = act.Posture,
        Time = act.Time,
        ChangeTime = change,
        Oil = act.Undo.Volume ?? (act.Undo.Kind is UndoKind.Fill ? act.State.Loses : null),
        Cautions = act.Undo.Cautions,
    });

    private void AddPart(Part part, WayOff? way, RebuildKind kind, MadeUpUnit? unit, string text, RebuildNode act, TimeSpan change)
    {
        steps.Add(new RebuildStep
        {
            Kind = kind,
            Node = part.Id,
            Unit = unit?.Id,
            Parts = [part.Id],
            Operation = text,
            Tool = act.Tool,
            Posture = act.Posture,
            Time = act.Time,
            ChangeTime = change,
            Torque = part.Fit?.Torque,
            Hand = way?.HeldBy?.Hand,
            Lubricant = part.Fit?.Lubricant,
            Orientation = part.Fit?.Orientation,
            NewParts = renewed.Contains(part.Id) ? [part.Id] : [],
            Cautions = [.. part.Fit?.Cautions ?? [], .. kind is RebuildKind.FitPart ? unit?.Cautions ?? [] : []],
        });
        if (part.Fit is { } fit)
            AddRightAfter(part, fit);
    }

    /// <summary>Oil that goes in where something is primed goes in with the priming.</summary>
    private void AddRightAfter(Part part, Fit fit)
    {
        if (fit.Prime is { Length: > 0 } prime)
            AddRightAfter(RebuildKind.Prime, part, OperationText.Capital(prime), fit.PrimeTime ?? job.Rates.Priming, fit.Fill);
        else if (fit.Fill is { } fill)
            AddRightAfter(RebuildKind.Fill, part, $"Fill oil at the {part.Name}", fit.FillTime ?? job.Rates.Filling, fill);
        if (fit.Bleed is { Length: > 0 } bleed)
            AddRightAfter(RebuildKind.Bleed, part, OperationText.Capital(bleed), fit.BleedTime ?? job.Rates.Bleeding, null);
    }

    private void AddRightAfter(RebuildKind kind, Part part, string text, TimeSpan time, Volume? oil) => steps.Add(new RebuildStep
    {
        Kind = kind,
        Node = part.Id,
        Operation = text,
        Posture = posture,
        Time = time,
        ChangeTime = TimeSpan.Zero,
        Oil = oil,
    });

    private string PartText(RebuildNode.PartIn act) => act switch
    {
        { InPlace: true } => InPlaceText(act.Part),
        { Alone.Operation: { Length: > 0 } own } when act.Part.Fit?.Operation is null => OperationText.Capital(own),
        _ => Text(act.Part, act.Way),
    };

    private static string InPlaceText(Part part) => $"Take out the {OperationText.Name(part)} and fit new";

    private string Text(Part part, WayOff? way) => OperationText.On(part, way?.HeldBy, renewed.Contains(part.Id));

    private TimeSpan Change(RebuildNode act)
    {
        var change = TimeSpan.Zero;
        if (act.Tool is { } taken && taken != tool)
            change += job.Rates.ChangeTime(job.Model, (tool = taken).Value);
        if (act.Posture is { } turned && turned != posture)
            change += job.Rates.ChangeTime(job.Model, (posture = turned).Value);
        return change;
    }

    private static RebuildKind KindOf(UndoKind kind) => kind switch
    {
        UndoKind.Fill => RebuildKind.Fill,
        UndoKind.Prime => RebuildKind.Prime,
        UndoKind.Bleed => RebuildKind.Bleed,
        _ => RebuildKind.UndoState,
    };
}
