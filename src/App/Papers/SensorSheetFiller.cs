using Ramwright.Paper.Sheets;
using Ramwright.Records.Events;

namespace Ramwright.App.Papers;

/// <summary>Fills the report of a sensor check from the comparison that stands.</summary>
public static class SensorSheetFiller
{
    public static SensorSheetInput Fill(PaperSource source, string number, Entry<SensorCompared> compared)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(compared);
        return new SensorSheetInput
        {
            Number = number,
            House = source.HouseHeader,
            Job = source.JobHeader,
            Points = compared.What.Points,
            Task = compared.What.Task,
            Answer = compared.What.Examine(),
            Reference = ProofReportFiller.Instrument(source, compared.What.Reference, compared.At),
            Compared = source.Day(compared.At),
            ComparedBy = source.Signer(compared.By),
            Issued = source.Now,
            Ledger = source.Mark,
        };
    }
}
