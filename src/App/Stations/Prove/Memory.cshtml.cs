using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;

namespace Ramwright.App.Stations.Prove;

/// <summary>Runs out of the tool's own memory: overlapping lists of its last peaks are joined, and those of the series are taken.</summary>
public sealed class MemoryPage(Bench bench, ProveStation station) : StationPage(bench, Station.Prove)
{
    private const int LargestUpload = 1_000_000;

    public MemoryLists Form { get; private set; } = new();

    public static ImmutableArray<Option> Orders { get; } = [new("", "the order is not known"), new("newest-first", "the newest first"), new("oldest-first", "the oldest first")];

    public bool MayRead => IsHere && Job.OpenSeries is { IsFull: false } open && open.Opened.What.Reference?.Kind == ReferenceKind.ToolMemory;

    /// <summary>How often the memory must be read out.</summary>
    public string Depth => Model.Behaviour?.MemoryDepth is { } depth ? string.Create(CultureInfo.InvariantCulture, $"This tool keeps its last {depth} peaks: read it out at least every {Math.Max(1, depth - 1)} runs.") : "";

    public ImmutableArray<string> Taken => Job.OpenSeries is { } open ? [.. open.Runs.Select(r => $"run {r.Taken.What.Run}: {Words.Show(r.Taken.What.Peak)}{(r.Void is null ? "" : ", void")}")] : [];

    protected override string Title => Job.OpenSeries is { IsFull: false } open ? $"Runs {open.NextRun} on, from the memory" : "From the tool's memory";

    protected override string Eyebrow => $"Prove · {Model.Limits.ProofRuns} full runs, limits {Words.Show(Model.Limits.Pressure)}";

    public Task<IActionResult> OnPostListsAsync(MemoryLists form, IFormFileCollection files)
    {
        Form = form;
        return TakeAsync(async s =>
        {
            var mistakes = new FormMistakes();
            if (Job.OpenSeries is not { } series || !MayRead)
                return ActAnswer.Refuse("", "No series is open that the tool's memory may measure.", "Open one with the tool's own memory as its reference.");
            if (await WithFilesAsync(files, mistakes) is { } lists)
                form.Lists = lists;
            var runs = mistakes.Count == 0 ? form.Read(series, Model.Behaviour?.MemoryDepth, Words.PressureUnit, mistakes) : [];
            return mistakes.Count > 0 ? ActAnswer.Refuse(mistakes) : await station.TakeRunsAsync(s, Job.Id, runs);
        }, PageOf(Station.Prove));
    }

    /// <summary>What was pasted and, behind it, each file as a list of its own; null where there is no file.</summary>
    private async Task<string?> WithFilesAsync(IFormFileCollection files, FormMistakes mistakes)
    {
        if (files.Count == 0)
            return null;
        var lists = new StringBuilder(Form.Lists);
        foreach (var file in files)
        {
            if (file.Length > LargestUpload)
            {
                mistakes.Add("lists", "A file is larger than a megabyte; a list is a few lines.", "Choose the files with the lists of this tool.");
                return null;
            }

            using var reader = new StreamReader(file.OpenReadStream(), Encoding.UTF8);
            lists.Append("\n\n").Append((await reader.ReadToEndAsync(HttpContext.RequestAborted)).Trim());
        }

        return lists.ToString();
    }
}
