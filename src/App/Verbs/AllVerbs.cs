using Ramwright.App.CommandLine;

namespace Ramwright.App.Verbs;

/// <summary>Every verb, in the order in which help lists them.</summary>
internal static class AllVerbs
{
    public static IEnumerable<Verb> List() =>
    [
        new DemoVerb(),
        new ServeVerb(),
        new CheckVerb(),
        new ExplainVerb(),
        new SchemaModelVerb(),
        new PlanVerb(),
        new PartsVerb(),
        new SetVerb(),
        new ProveVerb(),
        new DiagnoseVerb(),
        new StrokeVerb(),
        new IdentifyVerb(),
        new SpliceVerb(),
        new InstrumentReadVerb(),
        new InstrumentSimulateVerb(),
        new UncertaintyVerb(),
        new BackupVerb(),
        new RestoreVerb(),
        new VerifyLedgerVerb(),
        new VerifyPaperVerb(),
        new KeysListVerb(),
        new KeysExportVerb(),
        new KeysPageVerb(),
        new KeysRotateVerb(),
        new KeysRevokeVerb(),
        new KeysBackupVerb(),
        new KeysRestoreVerb(),
        new KernelFactorVerb(),
        new KernelNetworkVerb(),
        new CompletionsVerb(),
    ];
}
