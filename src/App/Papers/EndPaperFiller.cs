using Ramwright.App.Web.Pages;
using Ramwright.Paper.Sheets;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Papers;

/// <summary>Fills the paper of an end that is no release.</summary>
public static class EndPaperFiller
{
    public static EndPaperInput Fill(Bench bench, JobState job, ServiceModel model, HouseState house, LedgerHead head, string number, JobEnd end, string why, PersonId by) => new()
    {
        Number = number,
        House = PaperHeads.House(house.Settings),
        Job = PaperHeads.Job(job, house, model),
        Kind = end switch
        {
            JobEnd.Retired => EndKind.Retired,
            JobEnd.NotProven => EndKind.NotProven,
            JobEnd.SentOut => EndKind.SentOut,
            JobEnd.ReturnedUnrepaired => EndKind.ReturnedUnrepaired,
            _ => throw new ArgumentOutOfRangeException(nameof(end), end, "A released tool leaves with its proof report."),
        },
        Why = why,
        Found = PaperHeads.Found(job, model),
        Done = WorkWords.Of(job, model, PaperHeads.Units(house.Settings)),
        StateOfTool = job.Done.Any(n => model.FindPart(n) is not null) ? [$"in parts: {string.Join(", ", job.Done.Where(n => model.FindPart(n) is not null).Select(model.NameOf))} off"] : ["assembled"],
        Verdict = job.StandingProof?.Closed?.What.Verdict,
        Ended = bench.Today,
        SignedBy = PaperHeads.Signer(house, by),
        Ledger = PaperHeads.Mark(head),
    };
}
