using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove;

/// <summary>Loading up and down under a force cell shows the friction of the ram, which a force cell's budget otherwise takes from the model.</summary>
public sealed class FrictionPage(Bench bench, ReferenceStation station) : StationPage(bench, Station.Prove)
{
    public string? Cell { get; private set; }

    public string? Loops { get; private set; }

    public FrictionLoop.Shown? Shown => Job.Friction?.What.Examine() as FrictionLoop.Shown;

    public ImmutableArray<Option> Cells => [.. DeviceChoice.Instruments(House).Where(i => i.Facts.Kind == InstrumentKind.ForceCell).Select(i => new Option(i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}"))];

    protected override string Title => "Load up and down";

    protected override string Eyebrow => "Prove · the friction of the ram, measured";

    public Task<IActionResult> OnPostLoopsAsync(string? cell, string? loops)
    {
        (Cell, Loops) = (cell, loops);
        var mistakes = new FormMistakes();
        if (!InstrumentId.TryParse(cell, out var id))
            mistakes.Add("cell", "No force cell was chosen.", "Choose the cell between the jaw blocks.");
        var read = ComparisonForm.Loops(loops, Words.ForceUnit, mistakes);
        return TakeAsync(s => mistakes.Count > 0 ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.LoopAsync(s, Job.Id, id, read), $"/jobs/{Job.Id}/prove/friction");
    }
}
