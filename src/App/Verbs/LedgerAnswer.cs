using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary>What the verbs on the ledger's file answer alike.</summary>
internal static class LedgerAnswer
{
    public static Answer None(string path, Exit exit = Exit.BadInput) =>
        Answer.Refused([new(Place.Whole(path), "there is no ledger here", $"name the folder that holds {Path.GetFileName(path)} with --data", "no-ledger")], exit);

    /// <summary>A copy that was refused: bad input, a chain that is not sound (the answer is no), or a lock (the machine's).</summary>
    public static Answer Of(BackupAnswer.Refused refused, string file) => Answer.Refused([new(Place.Whole(file), refused.What, refused.Mend, refused.Code)], refused.Code switch
    {
        "ledger-damaged" or "backup-altered" => Exit.No,
        "ledger-locked" => Exit.Fault,
        _ => Exit.BadInput,
    });
}
