using Ramwright.Paper.Sheets;
using Ramwright.Parts;
using static Ramwright.Paper.Tests.Saltmarsh.House;

namespace Ramwright.Paper.Tests.Saltmarsh;

/// <summary>Invented data: a quote whose sums are right by hand: 64.50 + 31.20 + 7.80 = 103.50; 19 % is 19.665, to even 19.66.</summary>
internal static class Quotes
{
    public static Quote Quote => new()
    {
        Firm =
        [
            new(QuoteLineKind.Labour, "strip, rebuild, set and prove", null, 0.86m, "h", Euro(75), Euro(64.50m)),
            new(QuoteLineKind.Kit, "seal kit, ram end", "C85-9001", 1, "pc", Euro(31.20m), Euro(31.20m)),
            new(QuoteLineKind.Oil, "oil HEES 32", null, 0.3m, "l", Euro(26), Euro(7.80m)),
        ],
        OnCondition = [new(new("ram-rod"), Id("ram"), "ram, where its rod is scored", 0.12, Euro(188), Euro(9.50m))],
        FirmNet = Euro(103.50m),
        FirmTax = Euro(19.66m),
        FirmGross = Euro(123.16m),
        NotToExceedNet = Euro(301),
        NotToExceedTax = Euro(57.19m),
        NotToExceedGross = Euro(358.19m),
        ExpectedNet = Euro(127.20m),
        Cover = new()
        {
            Lines = [new(new("kit-ram"), null, "seal kit, ram end", "C85-9001", 1, Euro(31.20m))],
            Price = Euro(31.20m),
            ProvenOptimal = true,
            Gap = Euro(0),
            Unpriced = [],
            LeftOver = [],
            DoNotUse = [new("grey back-up ring", null, 1, "made for the older gland")],
        },
        Settings = new(Euro(75), 0.19, TimeSpan.FromDays(30)),
        Unpriced = [new(Id("wiper"), "wiper", 1, "C85-3112", null, null)],
    };

    public static QuoteSheetInput Sheet => new()
    {
        House = Header,
        Job = Job,
        Quote = Quote,
        Number = "SM-0409-Q1",
        Issued = new(2026, 11, 23),
        PreparedBy = Lead,
        Ledger = Ledger,
        Found = ["oil at the cap: the ram seal leaks", "612 bar as found, below 679 bar"],
        Work = ["renew ram seals and wiper", "new oil, bleed, set the relief, prove with 12 runs"],
    };
}
