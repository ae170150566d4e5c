using System.Collections.Immutable;
using Ramwright.Paper.Sheets;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;
using PaperSize = Ramwright.Paper.Sheets.PaperSize;
using UnitSystem = Ramwright.Metrology.Text.UnitSystem;

namespace Ramwright.App.Papers;

/// <summary>What every paper is filled from: the job, its model, the house, the ledger's head, the clock.</summary>
public sealed record PaperSource(JobState Job, ServiceModel Model, HouseState House, LedgerHead Head, TimeProvider Clock)
{
    public PaperSize Size => House.Settings.Paper == Records.House.PaperSize.Letter ? PaperSize.Letter : PaperSize.A4;

    public UnitSystem Units => House.Settings.Units == Records.House.UnitSystem.Imperial ? UnitSystem.Imperial : UnitSystem.Metric;

    public DateTimeOffset Now => Clock.GetLocalNow();

    public HouseHeader HouseHeader => new(House.Settings.ShopName)
    {
        Address = [.. House.Settings.ShopAddress.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)],
    };

    public LedgerMark Mark => new(Head.Number.Value, Head.Hash);

    public JobHeader JobHeader
    {
        get
        {
            var opened = Job.Opened ?? throw new InvalidOperationException("A paper is made of a job that was opened.");
            return new JobHeader
            {
                Number = Job.Id.Value,
                Tool = Model.Tool.Name,
                Serial = opened.What.Tool.Value,
                Customer = House.NameOf(opened.What.Customer),
                CustomerReference = opened.What.CustomerReference,
                Received = Day(opened.At),
                ConditionOnReceipt = opened.What.ConditionOnReceipt,
            };
        }
    }

    public Signer Signer(PersonId id) => new(House.NameOf(id), House.Find(id)?.Role);

    public DateOnly Day(DateTimeOffset moment) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, Clock.LocalTimeZone).DateTime);

    /// <summary>What was seen and measured, a line each.</summary>
    public ImmutableArray<string> Found =>
    [
        .. Job.Findings.Where(f => f.What.Seen).Select(f => f.What.Text ?? Model.Symptoms.FirstOrDefault(s => s.Id == f.What.Symptom)?.Name ?? f.What.Symptom?.Value ?? "").Where(t => t.Length > 0),
        .. Job.Inspections.Where(i => !i.What.Good).Select(i => $"{Model.NameOf(i.What.Part)}: to be renewed"),
    ];

    /// <summary>What was done to the tool, a line each.</summary>
    public ImmutableArray<string> WorkDone => WorkWords.Of(this);
}
