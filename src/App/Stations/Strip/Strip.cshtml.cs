using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Strip;

/// <summary>One step to a page: the caution, what to do, what it needs, why; then inspections, as they become possible.</summary>
public sealed class StripPage(Bench bench, StripStation station) : StationPage(bench, Station.Strip)
{
    private const int StepsToAPause = 7;

    public string? Measured { get; private set; }

    public StripPlan? Plan => Job.Strip?.Plan;

    /// <summary>The inspection that waits, before anything else comes off.</summary>
    public OpenInspection? Inspection => IsHere ? StripStation.OpenInspections(Job, Model).FirstOrDefault() : null;

    public int? Next => IsHere && Inspection is null ? Job.Strip?.Next : null;

    public StripStep? Step => Next is { } next ? Plan!.Steps[next] : null;

    public WayOff? Way => Step is { Way: { } way } step && Model.FindPart(step.Node) is { } part && way < part.WaysOff.Length ? part.WaysOff[way] : null;

    public bool PauseIsDue => Next is > 0 and var next && next % StepsToAPause == 0;

    /// <summary>Signed steps by their place, 0-based.</summary>
    public IEnumerable<KeyValuePair<int, Entry<StripStepSigned>>> Signed => Job.Strip?.Signed.AsEnumerable() ?? [];

    public string? Map { get; private set; }

    protected override string Title => Inspection is { } look ? Sentence.Head(look.Inspection.Look)
        : Step?.Operation ?? (IsHere ? "Everything is off" : "Strip, as it was done");

    protected override string Eyebrow => Inspection is { } look ? $"Strip · inspect {Model.NameOf(look.Part)}"
        : Next is { } next ? $"Strip · step {next + 1} of {Plan!.Steps.Length} · about {Words.Show(TimeSpan.FromMinutes(Math.Round(Remaining(next).TotalMinutes)))} after this one"
        : $"Strip · {Job.Strip?.Signed.Count ?? 0} steps signed";

    protected override ImmutableArray<BlockField> MoreBlock => Plan is { } plan ? [new("Step", $"{Math.Min((Job.Strip?.Next ?? plan.Steps.Length) + 1, plan.Steps.Length)} / {plan.Steps.Length}", Less: true)] : [];

    public Facts StepFacts
    {
        get
        {
            var facts = ImmutableArray.CreateBuilder<Fact>();
            if (Way?.HeldBy is { } held)
                facts.Add(new(held.Hand is null ? "Held by" : "Thread", HoldWords(held)));
            if (Step!.Tool is { } tool && Model.FindTool(tool) is { } shopTool)
                facts.Add(new("Tool", shopTool.Name, shopTool is ShopTool.Made ? "made here" : null));
            if (Way?.Breakaway is { } torque)
                facts.Add(new("Breakaway", Words.Show(torque)));
            else if (Way?.BreakawayForce is { } force)
                facts.Add(new("Breakaway", Words.Show(force)));
            if (Step.Posture is { } posture)
                facts.Add(new("Hold", Model.Postures.FirstOrDefault(p => p.Id == posture)?.Name ?? posture.Value.Replace('-', ' ')));
            if (Model.FindPart(Step.Node) is { Count: > 1 } part)
                facts.Add(new("How many", $"{part.Count}"));
            if (!Step.Renewals.IsEmpty)
                facts.Add(new("Goes in new", string.Join(", ", Step.Renewals.Select(r => Model.NameOf(r.Part)))));
            return new Facts(facts.ToImmutable());
        }
    }

    public Facts InspectionFacts => Inspection!.Inspection.Measure is { } measure
        ? Facts.Of(new("May be used again", Sentence.Head(Inspection.Inspection.Reuse)), new(Sentence.Head(measure.What), Limits(measure)))
        : Facts.Of(new Fact("May be used again", Sentence.Head(Inspection.Inspection.Reuse)));

    public string Why => Step!.Why is StepReason.InTheWayOf way ? $"In the way of: {string.Join(", ", way.Nodes.Take(3).Select(Model.NameOf))}{(way.Nodes.Length > 3 ? $" and {way.Nodes.Length - 3} more" : "")}." : "This is what the work is about.";

    public IEnumerable<StripStep> After => Next is { } next ? Plan!.Steps.Skip(next + 1).Take(2) : [];

    public Task<IActionResult> OnPostAsync(int step) => TakeAsync(s => station.SignAsync(s, Job.Id, step, null, null), PageOf(Station.Strip));

    public Task<IActionResult> OnPostInspectAsync(string? inspection, string? part, string? outcome, string? measured, string? note)
    {
        Measured = measured;
        var mistakes = new FormMistakes();
        MeasuredValue? value = string.IsNullOrWhiteSpace(measured) ? null : Figures.Read(measured, Words.LengthUnit, "measured", mistakes);
        return TakeAsync(
            s => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.InspectAsync(s, Job.Id, new(part ?? ""), new(inspection ?? ""), outcome == "good", value, note),
            PageOf(Station.Strip));
    }

    public Task<IActionResult> OnPostUndoAsync(string? why) => TakeAsync(s => station.UndoAsync(s, Job.Id, why), PageOf(Station.Strip));

    public Task<IActionResult> OnPostFinishAsync() => TakeAsync(s => station.FinishAsync(s, Job.Id), $"/jobs/{Job.Id}/now");

    protected override Task<IActionResult?> DrawAsync()
    {
        if (Job.Strip is { } strip)
            Map = ScreenMap.Of(Model, strip.Plan, Job.Done);
        return base.DrawAsync();
    }

    private TimeSpan Remaining(int next) => Plan!.Steps.Skip(next + 1).Aggregate(TimeSpan.Zero, (sum, s) => sum + s.Time + s.ChangeTime);

    private string Limits(MeasuredCriterion measure) => (measure.Least, measure.Most) switch
    {
        ({ } least, { } most) => $"{Words.Show(least)} to {Words.Show(most)}",
        ({ } least, null) => $"at least {Words.Show(least)}",
        (null, { } most) => $"at most {Words.Show(most)}",
        _ => "as the drawing says",
    };

    private static string HoldWords(Holding held)
    {
        var word = held switch
        {
            { Hand: ThreadHand.Left } => "left-hand",
            { Hand: ThreadHand.Right } => "right-hand",
            { Kind: HoldKind.PressFit } => "press fit",
            { Kind: HoldKind.LockScrew } => "lock screw",
            _ => held.Kind.ToString().ToLowerInvariant(),
        };
        return held.AdhesiveLocked ? word + ", locked with adhesive" : word;
    }
}
