using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Rebuild;

/// <summary>One step to a page: what goes in, which way round, how tight; a torque is answered with the figure applied.</summary>
public sealed class RebuildPage(Bench bench, RebuildStation station) : StationPage(bench, Station.Rebuild)
{
    public string? Applied { get; private set; }
    public string? Wrench { get; private set; }

    public RebuildPlan? Plan => Job.Rebuild?.Plan;

    public int? Next => IsHere ? Job.Rebuild?.Next : null;

    public RebuildStep? Step => Next is { } next ? Plan!.Steps[next] : null;

    /// <summary>Signed steps by their place, 0-based.</summary>
    public IEnumerable<KeyValuePair<int, Entry<RebuildStepSigned>>> Signed => Job.Rebuild?.Signed.AsEnumerable() ?? [];

    public string? Map { get; private set; }

    protected override string Title => Step?.Operation ?? (IsHere ? "The tool is together" : "Rebuild, as it was done");

    protected override string Eyebrow => Next is { } next ? $"Rebuild · step {next + 1} of {Plan!.Steps.Length}" : $"Rebuild · {Job.Rebuild?.Signed.Count ?? 0} steps signed";

    protected override ImmutableArray<BlockField> MoreBlock => Plan is { } plan ? [new("Step", $"{Math.Min((Job.Rebuild?.Next ?? plan.Steps.Length) + 1, plan.Steps.Length)} / {plan.Steps.Length}", Less: true)] : [];

    /// <summary>The unit of the torque asked for, and of the one answered.</summary>
    public string TorqueUnit => Words.UnitOf(Step?.Torque?.Torque ?? Torque.FromSi(0));

    /// <summary>Torque wrenches that may sign today; an overdue one is named as such.</summary>
    public ImmutableArray<Option> Wrenches =>
        [.. House.InstrumentsById.Values.Where(i => i.Facts is { Kind: InstrumentKind.TorqueWrench, InUse: true })
            .Select(i => new Option(i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}{(i.IsDueOn(Bench.Today) ? ", overdue" : "")}"))];

    public Facts StepFacts
    {
        get
        {
            var facts = ImmutableArray.CreateBuilder<Fact>();
            if (Step!.Torque is { } torque)
                facts.Add(new("Torque", Words.Show(torque.Torque), string.Create(CultureInfo.InvariantCulture, $"± {torque.Tolerance * 100:0.#} %")));
            if (Step.Hand is { } hand)
                facts.Add(new("Thread", hand == ThreadHand.Left ? "left-hand" : "right-hand"));
            if (Step.Orientation is { } way)
                facts.Add(new("Which way round", Sentence.Head(way)));
            if (Step.Lubricant is { } grease)
                facts.Add(new("Lubricate with", Sentence.Head(grease)));
            if (!Step.NewParts.IsEmpty)
                facts.Add(new("Goes in new", string.Join(", ", Step.NewParts.Select(Model.NameOf))));
            if (Step.Oil is { } oil)
                facts.Add(new("Oil", Words.Show(oil), Model.Fluid is { } fluid ? $"{fluid.Class} {fluid.Grade?.ToString(CultureInfo.InvariantCulture)}" : null));
            if (Step.Tool is { } tool && Model.FindTool(tool) is { } shopTool)
                facts.Add(new("Tool", shopTool.Name));
            if (Step.Posture is { } posture)
                facts.Add(new("Hold", Model.Postures.FirstOrDefault(p => p.Id == posture)?.Name ?? posture.Value.Replace('-', ' ')));
            return new Facts(facts.ToImmutable());
        }
    }

    public IEnumerable<RebuildStep> After => Next is { } next ? Plan!.Steps.Skip(next + 1).Take(2) : [];

    public Task<IActionResult> OnPostAsync(int step, string? applied, string? wrench)
    {
        (Applied, Wrench) = (applied, wrench);
        var mistakes = new FormMistakes();
        var value = string.IsNullOrWhiteSpace(applied) ? null : Figures.Read(applied, TorqueUnit, "applied", mistakes);
        InstrumentId? used = InstrumentId.TryParse(wrench, out var id) ? id : null;
        return TakeAsync(
            s => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.SignAsync(s, Job.Id, step, value?.AsTorque, used, [], null),
            PageOf(Station.Rebuild));
    }

    public Task<IActionResult> OnPostUndoAsync(string? why) => TakeAsync(s => station.UndoAsync(s, Job.Id, why), PageOf(Station.Rebuild));

    public Task<IActionResult> OnPostFinishAsync() => TakeAsync(s => station.FinishAsync(s, Job.Id), $"/jobs/{Job.Id}/now");

    protected override Task<IActionResult?> DrawAsync()
    {
        if (Job.Strip is { } strip)
            Map = ScreenMap.Of(Model, strip.Plan, Job.Done);
        return base.DrawAsync();
    }
}
