using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>A recorded stroke is dropped in, read, drawn with its phases, and taken to the job.</summary>
[RequestSizeLimit(StrokeFiles.Largest + (1 << 20))]
[RequestFormLimits(MultipartBodyLengthLimit = StrokeFiles.Largest + (1 << 20))]
public sealed class RecordingPage(Bench bench, FindStation station, StrokeFiles files, StrokeReader reader, Diagnosing diagnosing) : StationPage(bench, Station.Find)
{
    public string? Lag { get; private set; }
    public string? Column { get; private set; }
    public string? Scale { get; private set; }

    /// <summary>The recording that is looked at; null before the first.</summary>
    public StrokeRead? Shown { get; private set; }

    /// <summary>The recording is in the record, its file is not in the folder.</summary>
    public bool Missing { get; private set; }

    public StrokePicture? Picture { get; private set; }

    public DiagnosisView Diagnosis { get; private set; } = null!;

    protected override string Title => Looked is { } looked ? looked.What.FileName : "Read a recording";

    protected override string Eyebrow => "Find · a recorded stroke";

    /// <summary>The recording whose page this is; null where one is to be read.</summary>
    public Entry<StrokeRecorded>? Looked => long.TryParse(RouteData.Values["entry"] as string, NumberStyles.None, CultureInfo.InvariantCulture, out var entry)
        ? Job.Strokes.Find(s => s.Number.Value == entry)
        : null;

    public Task<IActionResult> OnPostAsync(IFormFile? file, string? response, string? column, string? scale)
    {
        (Lag, Column, Scale) = (response, column, scale);
        return TakeAsync(
            async signature =>
            {
                var mistakes = new FormMistakes();
                var said = new SaidOfRecording(Time(mistakes), Said(column), Said(scale));
                if (file is null || file.Length == 0)
                    mistakes.Add("file", "No file was chosen.", "Choose the text file that the logger wrote.");
                else if (file.Length > StrokeFiles.Largest)
                    mistakes.Add("file", "The file is larger than 64 MB.", "Cut it to one stroke, or read it with: ramwright identify.");
                if (mistakes.Count > 0 || file is null)
                    return ActAnswer.Refuse(mistakes);
                await using var bytes = file.OpenReadStream();
                var sha = await files.PutAsync(bytes, HttpContext.RequestAborted);
                var name = Path.GetFileName(file.FileName);
                return reader.Read(files.Find(sha)!, sha, name, Model, said, mistakes) is { } read
                    ? await station.RecordStrokeAsync(signature, Job.Id, name, sha, said, read)
                    : ActAnswer.Refuse(mistakes);
            },
            _ => PageOf(Station.Find) + "/recording/latest");
    }

    protected override async Task<IActionResult?> DrawAsync()
    {
        if (RouteData.Values["entry"] is "latest" && Job.Strokes is [.., var last])
            return LocalRedirect(string.Create(CultureInfo.InvariantCulture, $"{PageOf(Station.Find)}/recording/{last.Number.Value}"));
        Diagnosis = new(Model, Job.Id, Words, diagnosing.Of(Model, Job, House.Settings.Rates));
        if (Looked is { What: var stroke })
            Look(stroke);
        return IsHere || Shown is not null ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));
    }

    private void Look(StrokeRecorded stroke)
    {
        if (files.Find(stroke.Sha256) is not { } path)
        {
            Missing = true;
            return;
        }

        Shown = reader.Read(path, stroke.Sha256, stroke.FileName, Model, new(stroke.Response, stroke.PressureColumn, stroke.PressureScale), new FormMistakes());
        if (Shown is not null)
            Picture = StrokePicture.Of(Shown, Model, Words.System);
    }

    private TimeSpan? Time(FormMistakes mistakes)
    {
        if (string.IsNullOrWhiteSpace(Lag))
            return null;
        if (Figures.Read(Lag, "ms", "response", mistakes) is not { } read)
            return null;
        if (read.Kind == MeasuredKind.Time && read.Si is > 0 and <= 1)
            return TimeSpan.FromSeconds(read.Si);
        mistakes.Add("response", "A sensor's time constant is above zero and at most a second.", "Write it in milliseconds, such as 4.");
        return null;
    }

    private static string? Said(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
