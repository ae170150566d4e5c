using System.Collections.Immutable;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Papers;

/// <summary>Fills each sheet of the Paper room from the records of a job.</summary>
public static class PaperFiller
{
    /// <summary>So many parts are named on a paper that says what is off.</summary>
    private const int NamedParts = 6;

    public static WorkSheetInput WorkSheet(PaperSource source)
    {
        var (job, model) = (source.Job, source.Model);
        return new WorkSheetInput
        {
            House = source.HouseHeader,
            Job = source.JobHeader,
            Model = model,
            Strip = job.Strip?.Plan,
            Rebuild = job.Rebuild?.Plan,
            Map = null,
            Purpose = job.Targets?.What.Why,
            PrintedAt = source.Now,
            PlannedBy = job.Strip is { } planned ? source.Signer(planned.Planned.By) : null,
            Ledger = source.Mark,
        };
    }

    public static QuoteSheetInput Quote(PaperSource source)
    {
        var made = source.Job.Quote?.Made ?? throw new InvalidOperationException("No quote was made yet.");
        return new QuoteSheetInput
        {
            House = source.HouseHeader,
            Job = source.JobHeader,
            Quote = made.What.Quote,
            Number = made.What.Number,
            Issued = source.Day(made.At),
            PreparedBy = source.Signer(made.By),
            Found = source.Found,
            Work = [.. source.Job.Targets is { What.Parts: { IsEmpty: false } parts } ? [$"free and renew: {string.Join(", ", parts.Select(source.Model.NameOf))}"] : Array.Empty<string>(), $"set the relief to {QuantityText.Show(source.Model.Limits.Nominal, source.Units)} and prove it in {source.Model.Limits.ProofRuns} full runs"],
            Replaces = Previous(source.Job),
            Ledger = source.Mark,
        };
    }

    public static EndPaperInput End(PaperSource source, string number)
    {
        var end = source.Job.End ?? throw new InvalidOperationException("The job has not ended yet.");
        return new EndPaperInput
        {
            Number = number,
            House = source.HouseHeader,
            Job = source.JobHeader,
            Kind = end.What.End switch
            {
                JobEnd.Retired => EndKind.Retired,
                JobEnd.NotProven => EndKind.NotProven,
                JobEnd.SentOut => EndKind.SentOut,
                JobEnd.ReturnedUnrepaired => EndKind.ReturnedUnrepaired,
                _ => throw new InvalidOperationException("A released tool leaves with its proof report."),
            },
            Why = end.What.Why,
            Found = source.Found,
            Done = source.WorkDone,
            StateOfTool = StateOfTool(source),
            Verdict = source.Job.StandingProof?.Closed?.What.Verdict,
            Ended = source.Day(end.At),
            SignedBy = source.Signer(end.By),
            Ledger = source.Mark,
        };
    }

    /// <summary>Whether the tool leaves in one piece, and how it was made safe.</summary>
    private static ImmutableArray<string> StateOfTool(PaperSource source)
    {
        var off = source.Model.Parts.Where(p => source.Job.Done.Contains(p.Id)).Select(p => p.Name).ToList();
        var safe = source.Model.States.Where(s => s.Isolates && source.Job.Done.Contains(s.Id)).Select(s => s.Name).ToList();
        var more = off.Count > NamedParts ? $" and {off.Count - NamedParts} more" : "";
        return
        [
            off.Count == 0 ? "in one piece" : $"in parts; off are {string.Join(", ", off.Take(NamedParts))}{more}",
            .. safe.Count == 0 ? Array.Empty<string>() : [string.Join(", ", safe)],
        ];
    }

    private static string? Previous(JobState job)
    {
        var numbers = job.History.Select(e => e.What).OfType<QuoteMade>().Select(q => q.Number).ToImmutableArray();
        return numbers.Length > 1 ? numbers[^2] : null;
    }
}
