using System.CommandLine;
using System.Net;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.App.Papers;
using Ramwright.App.Web;
using Ramwright.Paper.Signing;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary><c>serve</c>: the bench in the browser.</summary>
internal sealed class ServeVerb : Verb
{
    private const string DemoFolder = "demo-shop";

    private readonly Option<int> _port = new("--port") { Description = "port; 0 takes any free one", HelpName = "PORT", DefaultValueFactory = _ => 8085 };
    private readonly Option<string> _address = new("--address") { Description = "address to listen on; this machine only unless told otherwise", HelpName = "IP", DefaultValueFactory = _ => "127.0.0.1" };
    private readonly Option<string?> _data = DataOption.Create();
    private readonly Option<bool> _demo = new("--demo") { Description = "the made-up Saltmarsh Tool Service, in a folder of its own unless --data names one" };

    public override string Name => "serve";

    public override string Summary => "the bench in the browser, on this machine only unless told otherwise";

    public override IReadOnlyList<Example> Examples =>
    [
        new("serve", "then open http://localhost:8085") { RunsAlone = false },
        new("serve --demo", "the same with a made-up shop in it") { RunsAlone = false },
        new("serve --address 192.168.0.20 --data /srv/ramwright", "for the tablets of the house's own network") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 stopped by hand, 2 bad input, 70 the port or the data folder cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_port, _address, _data, _demo];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var (port, address) = (given.GetValue(_port), given.GetValue(_address)!);
        if (port is < 0 or > 65535)
            return Answer.BadUse("--port", $"{port} is no port", "write a number from 0 to 65535");
        if (address != "localhost" && !IPAddress.TryParse(address, out _))
            return Answer.BadUse("--address", $"'{address}' is no address of this machine", "write an IP address, such as 127.0.0.1 or 0.0.0.0 for all");

        var demo = given.GetValue(_demo);
        var folder = DataFolder.Find(given.GetValue(_data));
        if (demo && given.GetValue(_data) is null)
            folder = Path.Combine(folder, DemoFolder);
        Directory.CreateDirectory(folder);
        await CheckLedgerAsync(DataFolder.LedgerIn(folder), output, cancel);
        await using var app = WebHost.Build(new ServeOptions { Port = port, Address = address, DataFolder = folder, Demo = demo });
        await MakeFirstKeyAsync(app, output, cancel);
        await app.StartAsync(cancel);
        var at = string.Join(' ', app.Urls);
        output.Say($"the bench is open at {at}; records in {folder}; Ctrl+C closes it");
        await app.WaitForShutdownAsync(cancel);
        return new Answer(Exit.Yes, "", new JsonObject { ["address"] = at, ["data"] = folder });
    }

    /// <summary>The house's key is made at the first start. Where it cannot be used the bench opens all the same: only a release will be refused.</summary>
    private static async Task MakeFirstKeyAsync(WebApplication app, CheckedOutput output, CancellationToken cancel)
    {
        try
        {
            var house = await app.Services.GetRequiredService<Ledger>().HouseAsync(cancel);
            app.Services.GetRequiredService<PaperArchive>().Keys.Open(house.Settings.ShopName).Dispose();
        }
        catch (KeyRingException fault)
        {
            output.Words.WriteLine($"note: papers cannot be signed: {fault.Reason}; {fault.Remedy}");
        }
    }

    /// <summary>A ledger that cannot be read whole or written is said at the start, not by the first page that signs; an altered one is said, and stays in use.</summary>
    private static async Task CheckLedgerAsync(string path, CheckedOutput output, CancellationToken cancel)
    {
        if (File.Exists(path))
            await new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete).DisposeAsync();
        using var ledger = new Ledger(path, TimeProvider.System);
        if (await ledger.VerifyAsync(null, cancel) is not Verification.Genuine)
            output.Words.WriteLine("note: the ledger is not as it was written; run: ramwright verify ledger");
    }
}
