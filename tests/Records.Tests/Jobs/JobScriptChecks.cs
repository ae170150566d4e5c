using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Jobs;

/// <summary>The words of a script that say how the job stands.</summary>
internal static class JobScriptChecks
{
    public static void Check(JobState s, string line)
    {
        var words = line.Split(' ', 2);
        var expected = words.Length > 1 ? words[1] : "";
        var actual = words[0] switch
        {
            "station" => s.Station.ToString(),
            "route" => string.Join(' ', s.Route.Select(r => r.What.Station)),
            "open" => s.IsOpen ? "yes" : "no",
            "done" => Nodes(s.Done),
            "owed" => Nodes(s.RenewalsOwed),
            "strip-next" => s.Strip?.Next is { } step ? $"{step + 1}" : "none",
            "rebuild-next" => s.Rebuild?.Next is { } step ? $"{step + 1}" : "none",
            "safe" => string.Join(' ', s.SafeStates.Select(x => x.What.State.Value)),
            "answer" => s.Quote?.Answer is { } answer ? answer.What.Accepted ? "yes" : "no" : "none",
            "screw" => $"{Math.Round(s.Setting.Screw.Turns * 12)}/12",
            "runs" => string.Join(' ', s.Setting.Runs.Select(r => $"{Math.Round(r.Screw.Turns * 12)}/12:{r.Read.What.Peak.Bar:0.##}")),
            "locked" => s.Setting.Locked is null ? "no" : "yes",
            "peaks" => string.Join(' ', s.Series[^1].Peaks.Select(p => $"{p.Bar:0.##}")),
            "next-run" => $"{s.OpenSeries?.NextRun}",
            "full" => s.OpenSeries is { IsFull: true } ? "yes" : "no",
            "proof" => s.StandingProof?.Closed?.What.Verdict.Conformity.ToString() ?? "none",
            "quarantine" => s.Quarantine is null ? "no" : "yes",
            "corrected" => string.Join(' ', s.Corrected.Select(n => n.Value).Order()),
            "entries" => $"{s.History.Count}",
            "version" => $"{s.Version}",
            "notes" => $"{s.Notes.Count}",
            "signed" => Signed(s),
            "next-paper" => s.NextReportNumber(Records.Events.ReportKind.ProofReport),
            "next-quote" => s.NextQuoteNumber(),
            _ => throw new ArgumentException($"The script cannot ask for '{words[0]}'.", nameof(line)),
        };
        Assert.Equal($"{words[0]} {expected}", $"{words[0]} {actual}");
    }

    private static string Nodes(IEnumerable<NodeId> nodes) => string.Join(' ', nodes.Select(n => n.Value).Order(StringComparer.Ordinal));

    /// <summary>Strip steps with who signed them, when and under which number.</summary>
    private static string Signed(JobState s) => string.Join(' ', s.Strip!.Signed.Select(p => $"{p.Key + 1}:{p.Value.By}:{p.Value.At:HH:mm}:{p.Value.Number}"));
}
