using System.Net.Sockets;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Connections;
using Ramwright.Metrology.Input;
using Ramwright.Paper.Signing;
using Ramwright.Records.Store;

namespace Ramwright.App.CommandLine;

/// <summary>Turns what the machine refused (disk, database, rights, port), or a defect of our own, into a plain answer with exit status 70.</summary>
internal static class Fault
{
    /// <summary>Set to 1 it lets the whole fault be written to standard error as well.</summary>
    public const string TraceVariable = "RAMWRIGHT_TRACE";

    private const int NoSpaceOnUnix = 28, NoSpaceOnWindows = 0x70;

    /// <summary>The answer to a fault. Every fault has one: a person at the vice never sees a stack trace.</summary>
    public static Answer Explains(Exception fault) => fault switch
    {
        LedgerUnavailableException ledger => Of(ledger.Code, ledger.Reason, ledger.Remedy),
        KeyRingException keys => Of(keys.Code, keys.Reason, keys.Remedy),
        IOException { InnerException: AddressInUseException } => Of("port-taken", "another program listens on this port already", "close it (perhaps the bench is open already), or take another port with --port"),
        SocketException { SocketErrorCode: SocketError.AccessDenied } => Of("port-taken", "this account may not listen on this port", "take a port from 1024 up with --port"),
        SocketException socket => Of("no-address", $"this machine cannot listen on that address: {socket.Message}", "write an address of this machine with --address, or leave it out"),
        UnauthorizedAccessException => Of("no-access", fault.Message, "give the account that runs ramwright the right to that file or folder, or name another folder"),
        IOException io when (io.HResult & 0xFFFF) is NoSpaceOnUnix or NoSpaceOnWindows => Of("disk-full", io.Message, "free some space, then repeat; what was acknowledged before is kept"),
        IOException => Of("machine", fault.Message, "look at the disk and the folder, then repeat; what was acknowledged before is kept"),
        _ => Of("defect", $"{fault.GetType().Name}: {fault.Message}", $"this is a defect of ramwright; repeat with {TraceVariable}=1 and report what it prints"),
    };

    private static Answer Of(string code, string what, string mend) => new(Exit.Fault, "", new JsonObject
    {
        ["fault"] = new JsonObject { ["code"] = code, ["what"] = what, ["mend"] = mend },
    })
    {
        Mistakes = [new(Place.Whole("ramwright"), what, mend, code)],
    };
}
