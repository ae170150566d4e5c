using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Web.Pages;

/// <summary>A note for the next technician, from any station.</summary>
public static class NotePost
{
    public static async Task<ActAnswer> WriteAsync(Bench bench, Signature signature, JobId job, Station station, string? text) =>
        string.IsNullOrWhiteSpace(text)
            ? ActAnswer.Refuse("note", "The note is empty.", "Write what the next technician should know.")
            : ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.Token, signature.By, job, seen: null, new NoteWritten(station, text.Trim())));
}
