using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Tests.Saltmarsh;

/// <summary>Invented data: the made-up Saltmarsh Tool Service and a short model of the made-up Corrie 85.</summary>
internal static class House
{
    public static readonly HouseHeader Header = new("Saltmarsh Tool Service")
    {
        Address = ["4 Samphire Quay", "Eelmarsh"],
        Contact = ["desk@saltmarsh.example"],
    };

    public static readonly JobHeader Job = new()
    {
        Number = "SM-0409",
        Tool = "Corrie 85",
        Serial = "1987",
        Customer = "Samphire Power",
        CustomerReference = "SP 77-14",
        Received = new(2026, 11, 23),
        ConditionOnReceipt = "leaking at the cap, complete, no damage seen",
    };

    public static readonly Signer Lead = new("M. Orme", "lead");
    public static readonly LedgerMark Ledger = new(18_204, "9f3c1ae0b7d24c8855aa01c3e7f09d1b2c3d4e5f60718293a4b5c6d7e8f90a1b");
    public static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 4, 0, TimeSpan.FromHours(1));

    public static readonly Limits Limits = new()
    {
        Pressure = new(Pressure.FromBar(679), Pressure.FromBar(721)),
        Nominal = Pressure.FromBar(700),
        Maximum = Pressure.FromBar(735),
        ProofRuns = 12,
        Rest = TimeSpan.FromSeconds(40),
    };

    public static Money Euro(decimal amount) => new(amount, "EUR");

    public static NodeId Id(string id) => new(id);

    public static readonly ServiceModel Model = new()
    {
        Tool = new("corrie-85", "Corrie 85", "Corrie", ToolKind.Compression) { Revision = "3" },
        Limits = Limits,
        Fluid = new("HEES", 32, Volume.FromMillilitres(95)),
        Fingerprint = "41d0c2b7aa90e3f15566778899aabbccddeeff00112233445566778899aabbcc",
        States =
        [
            new() { Id = Id("battery-removed"), Name = "battery out", Isolates = true, Reach = new() { Text = "take the pack off", Time = TimeSpan.FromMinutes(0.3) } },
            new() { Id = Id("pressure-released"), Name = "pressure released", Isolates = true, Reach = new() { Text = "press the return lever", Time = TimeSpan.FromMinutes(0.2) } },
        ],
        Tools =
        [
            new ShopTool.Bought { Id = new("hex-5"), Name = "hex key 5 mm" },
            new ShopTool.Made { Id = new("hook-wrench-62"), Name = "hook wrench 62 mm", Shape = MadeShape.HookWrench },
            new ShopTool.Bought { Id = new("seal-pick"), Name = "seal pick, brass" },
        ],
        Postures = [new(new("upright-in-vice"), "upright in the vice, soft jaws"), new(new("flat"), "flat on the mat")],
        Parts = [.. Parts()],
    };

    private static IEnumerable<Part> Parts()
    {
        yield return new()
        {
            Id = Id("cap-nut"),
            Name = "cap nut",
            Number = "C85-3107",
            WaysOff =
            [
                new()
                {
                    Tool = new("hook-wrench-62"), Posture = new("upright-in-vice"), Time = TimeSpan.FromMinutes(2.5), HeldBy = new(HoldKind.Thread, ThreadHand.Left),
                    Breakaway = Torque.FromNewtonMetres(85),
                },
            ],
        };
        yield return new()
        {
            Id = Id("ram"),
            Name = "ram",
            Number = "C85-3110",
            WaysOff = [new() { Posture = new("upright-in-vice"), Time = TimeSpan.FromMinutes(1.2) }],
            Inspections =
            [
                new()
                {
                    Id = new("ram-rod"), Look = "draw a fingernail along the rod", Reuse = "no edge is felt and the chrome is whole",
                    Measure = new("rod diameter", Length.FromMillimetres(24.95), null),
                },
            ],
        };
        yield return new() { Id = Id("seal-ram"), Name = "ram seal", Number = "C85-3111", Count = 2, Renew = RenewalRule.WhenDisturbed, WaysOff = [new() { Tool = new("seal-pick"), Time = TimeSpan.FromMinutes(1) }] };
        yield return new() { Id = Id("wiper"), Name = "wiper", Number = "C85-3112", Renew = RenewalRule.Always };
    }
}
