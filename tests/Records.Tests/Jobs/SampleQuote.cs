using Ramwright.Metrology.Quantities;
using Ramwright.Parts;

namespace Ramwright.Records.Tests.Jobs;

/// <summary>A quote with a line of each sort. Figures invented.</summary>
internal static class SampleQuote
{
    public static Quote Made() => new()
    {
        Firm = [new(QuoteLineKind.Labour, "strip and rebuild", null, 1.25m, "h", new(68, "EUR"), new(85, "EUR"))],
        OnCondition = [new(new("scratch"), new("ram"), "ram scored", 0.1, new(140.50m, "EUR"), new(10, "EUR"))],
        FirmNet = new(85, "EUR"),
        FirmTax = new(16.15m, "EUR"),
        FirmGross = new(101.15m, "EUR"),
        NotToExceedNet = new(236, "EUR"),
        NotToExceedTax = new(44.84m, "EUR"),
        NotToExceedGross = new(280.84m, "EUR"),
        ExpectedNet = new(100.05m, "EUR"),
        Settings = new(new(68, "EUR"), 0.19, TimeSpan.FromDays(30)),
        Cover = new()
        {
            Lines = [new(new("seal-kit"), null, "seal kit", "C85-9001", 1, new(48.20m, "EUR"))],
            Price = new(48.20m, "EUR"),
            ProvenOptimal = true,
            Gap = new(0, "EUR"),
            Unpriced = [],
            LeftOver = [new(new("wiper"), 1)],
            DoNotUse = [new("26 mm rod seal", null, 1, "revision A only")],
        },
        UnpricedOil = Volume.FromMillilitres(95),
        Unpriced = [new(new("plate"), "rating plate", 1, null, null, null)],
    };
}
