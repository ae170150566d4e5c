using System.Collections.Immutable;
using Ramwright.Paper.Sheets;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Papers;

/// <summary>What stands at the head of every paper of a job.</summary>
public static class PaperHeads
{
    public static HouseHeader House(HouseSettings settings) => new(settings.ShopName)
    {
        Address = [.. settings.ShopAddress.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)],
    };

    public static JobHeader Job(JobState job, HouseState house, ServiceModel model) => new()
    {
        Number = job.Id.Value,
        Tool = model.Tool.Name,
        Serial = job.Opened!.What.Tool.Value,
        Customer = house.NameOf(job.Opened.What.Customer),
        CustomerReference = job.Opened.What.CustomerReference,
        Received = DateOnly.FromDateTime(job.Opened.At.DateTime),
        ConditionOnReceipt = job.Opened.What.ConditionOnReceipt,
    };

    public static Signer Signer(HouseState house, PersonId person) => new(house.NameOf(person), house.Find(person)?.Role);

    public static LedgerMark Mark(LedgerHead head) => new(head.Number.Value, head.Hash);

    public static Paper.Sheets.PaperSize Size(HouseSettings settings) => settings.Paper == Records.House.PaperSize.Letter ? Paper.Sheets.PaperSize.Letter : Paper.Sheets.PaperSize.A4;

    public static Metrology.Text.UnitSystem Units(HouseSettings settings) => settings.Units == Records.House.UnitSystem.Imperial ? Metrology.Text.UnitSystem.Imperial : Metrology.Text.UnitSystem.Metric;

    /// <summary>What was found, a line each, for quote and report.</summary>
    public static ImmutableArray<string> Found(JobState job, ServiceModel model) =>
    [
        .. job.Findings.Where(f => f.What.Seen).Select(f => f.What.Text ?? model.Symptoms.FirstOrDefault(s => s.Id == f.What.Symptom)?.Name ?? f.What.Symptom?.Value ?? ""),
        .. job.Targets is { } targets ? [targets.What.Why] : Array.Empty<string>(),
    ];
}
