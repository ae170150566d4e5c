using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>What the reader of a budget must know beside its lines.</summary>
public enum BudgetRemark
{
    /// <summary>One calibration says nothing of drift: as much is taken in a year as that calibration itself may be off.</summary>
    DriftAssumed,

    /// <summary>Nobody states what temperature does to the device; it counts as nothing.</summary>
    TemperatureNotStated,

    /// <summary>The certificate's points scatter more than their stated uncertainties allow: their own scatter counts instead.</summary>
    PointsScatterMore,

    /// <summary>The certificate has too few points for a line; readings count as shown.</summary>
    PointsTooFew,

    /// <summary>Nobody states the time constant; peak capture counts the sampling alone.</summary>
    ResponseNotStated,
}

/// <summary>What the reference of a proof may be off, worked out and fixed when the series opens.</summary>
/// <param name="Lines">Contributions, the largest first.</param>
/// <param name="Factor">Coverage factor k of the systematic part: 2, or more where degrees of freedom are few (JCGM 100:2008, G.6.4; from memory).</param>
/// <param name="Capture">How far a true peak may lie above its reading: a bound, added whole and upward alone.</param>
/// <param name="RisePascalsPerSecond">Rise of the pressure before the peak, Pa/s, on which the capture rests.</param>
public sealed record ReferenceBudget(ReferenceKind Kind, ImmutableArray<BudgetLine> Lines, double Factor, Pressure Capture, double RisePascalsPerSecond)
{
    /// <summary>Effective degrees of freedom of the systematic part; null where infinite.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>Time constant and sampling interval together.</summary>
    public TimeSpan Lateness { get; init; }

    public ReadingCorrection? Correction { get; init; }

    public ImmutableArray<BudgetRemark> Remarks { get; init; } = [];

    /// <summary>Combined standard uncertainty of all that is the same in every run.</summary>
    public Pressure SystematicStandard => Combined(Effect.Systematic);

    /// <summary>Combined standard uncertainty of all that is new in each run.</summary>
    public Pressure RandomStandard => Combined(Effect.Random);

    /// <summary>What goes into the series.</summary>
    public SystematicUncertainty Systematic
    {
        get
        {
            var expanded = Factor * SystematicStandard;
            return new(expanded, expanded + Capture, 2 * RandomStandard);
        }
    }

    private Pressure Combined(Effect effect) => Pressure.FromPascals(Math.Sqrt(Lines.Where(l => l.Effect == effect).Sum(l => l.Standard.Pascals * l.Standard.Pascals)));
}
