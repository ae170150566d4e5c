using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;
using Ramwright.Records.Store;

namespace Ramwright.App.CommandLine;

/// <summary>Turns what the machine refused (disk, database, rights), or a defect of our own, into a plain answer with exit status 70.</summary>
internal static class Fault
{
    /// <summary>The answer to a fault. Every fault has one: a person at the vice never sees a stack trace.</summary>
    public static Answer Explains(Exception fault) => fault switch
    {
        LedgerUnavailableException ledger => Of(ledger.Code, ledger.Reason, ledger.Remedy),
        UnauthorizedAccessException => Of("no-access", fault.Message, "give the account that runs ramwright the right to that file or folder"),
        IOException => Of("machine", fault.Message, "look at the disk and its free space, then repeat; what was acknowledged before is kept"),
        _ => Of("defect", $"{fault.GetType().Name}: {fault.Message}", "this is a defect of ramwright; repeat with RAMWRIGHT_TRACE=1 and report what it prints"),
    };

    private static Answer Of(string code, string what, string mend) => new(Exit.Fault, "", new JsonObject
    {
        ["fault"] = new JsonObject { ["code"] = code, ["what"] = what, ["mend"] = mend },
    })
    {
        Mistakes = [new(Place.Whole("ramwright"), what, mend, code)],
    };
}
