using System.Globalization;
using Ramwright.Proving;

namespace Ramwright.Paper.Sheets.Proof;

/// <summary>What the code on a proof report carries: which report, what verdict, on which head of the ledger. Not signed yet.</summary>
public static class ProofPayload
{
    /// <summary><c>RAMWRIGHT/1 PROOF SM-0409-P1 CONFORMS 18204 9F3C1AE0…</c>: capitals and digits, so that the code stays small.</summary>
    public static string Of(ProofReportInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var verdict = input.Verdict.Conformity switch
        {
            Conformity.Conforms => "CONFORMS",
            Conformity.DoesNotConform => "DOES-NOT-CONFORM",
            _ => "UNDECIDED",
        };
        return string.Create(CultureInfo.InvariantCulture, $"RAMWRIGHT/1 PROOF {input.Number.ToUpperInvariant()} {verdict} {input.Ledger.Entry} {input.Ledger.Head.ToUpperInvariant()}");
    }
}
