using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving;

/// <summary>The three answers to a proof series.</summary>
public enum Conformity { Conforms, DoesNotConform, Undecided }

/// <summary>Which limit a claim is about.</summary>
public enum LimitSide { Lower, Upper }

/// <summary>Whose scatter the claims rest on.</summary>
public enum ScatterSource { Own, Moderated }

/// <summary>The answer to a proof series, with all that it rests on.</summary>
public sealed record Verdict
{
    public required Conformity Conformity { get; init; }
    public required ImmutableArray<Reason> Reasons { get; init; }
    public required int Runs { get; init; }
    public required int PlannedRuns { get; init; }

    /// <summary>Null without a run.</summary>
    public Pressure? Mean { get; init; }

    /// <summary>Sample standard deviation (n − 1); null below two runs.</summary>
    public Pressure? StandardDeviation { get; init; }

    /// <summary>The standard deviation that the claims rest on: the sample's, or the most that equal readings can hide when the device's steps are coarser, or a larger moderated one.</summary>
    public Pressure? ScatterUsed { get; init; }

    public ScatterSource ScatterFrom { get; init; }

    /// <summary>What the earlier series said, where they moderate the scatter and there are two runs or more.</summary>
    public Moderation? Moderation { get; init; }

    /// <summary>Where the series may be extended: confidence of the claims at each of the two looks, so that both together keep the asked one; a probability.</summary>
    public double? ConfidenceOfEachLook { get; init; }

    /// <summary>The lower limit moved up by what the device may be off.</summary>
    public required Pressure GuardLow { get; init; }

    /// <summary>The upper limit moved down by what the device may be off.</summary>
    public required Pressure GuardHigh { get; init; }

    /// <summary>One claim per limit; empty below two runs.</summary>
    public ImmutableArray<LimitClaim> Claims { get; init; } = [];

    /// <summary>One-sided factor k in units of the scatter used, for this n, coverage and confidence; null below two runs.</summary>
    public double? OneSidedFactor { get; init; }

    /// <summary>Exact two-sided factor (ISO 16269-6); null below two runs.</summary>
    public double? ToleranceFactor { get; init; }

    /// <summary>mean ∓ two-sided factor × the tool's own scatter, reported beside; null where there is no scatter to build it on.</summary>
    public PressureWindow? Interval { get; init; }

    /// <summary>What the screens flagged; they delete nothing.</summary>
    public ImmutableArray<Flag> Flags { get; init; } = [];
}

/// <summary>What the earlier series of a model said to the scatter of a series.</summary>
/// <param name="Series">How many there were.</param>
/// <param name="Typical">Scatter of a typical tool of the model.</param>
/// <param name="AlikeDegrees">How alike they scatter, in degrees of freedom: about 10 when tools differ much, 60 and more when they are alike.</param>
/// <param name="Moderated">This tool's own scatter, moderated; null where it is hidden. The larger of the two counts.</param>
public sealed record Moderation(int Series, Pressure Typical, double AlikeDegrees, Pressure? Moderated);

/// <summary>What is shown at one limit.</summary>
/// <param name="Limit">The limit itself.</param>
/// <param name="Guarded">The limit moved inward.</param>
/// <param name="DistanceInS">Distance of the mean from the guarded limit, in units of the scatter used; positive is inside. Zero where equal readings hide the scatter.</param>
/// <param name="ShareShown">With the asked confidence at least this share of full runs lies on the right side of the guarded limit, 0 to 1.</param>
/// <param name="Holds">Whether the share asked is shown.</param>
public sealed record LimitClaim(LimitSide Side, Pressure Limit, Pressure Guarded, double DistanceInS, double ShareShown, bool Holds);

/// <summary>Why the verdict is what it is: data, put into words at the edge by <c>ReasonText</c>.</summary>
public abstract record Reason
{
    private Reason() { }

    public abstract string Code { get; }

    /// <summary>A valid run beyond a limit by more than its total expanded uncertainty.</summary>
    public sealed record RunOutside(int Run, Pressure Peak, LimitSide Side, Pressure Limit, Pressure Uncertainty) : Reason { public override string Code => "run-outside"; }

    /// <summary>With the asked confidence the share beyond the limit moved outward is larger than allowed.</summary>
    public sealed record ShareTooSmall(LimitSide Side, Pressure MovedOutward, double ShareAtMost) : Reason { public override string Code => "share-too-small"; }

    public sealed record BothClaimsHold : Reason { public override string Code => "both-claims-hold"; }

    public sealed record NoRun : Reason { public override string Code => "no-run"; }

    public sealed record TooFewRuns(int Taken, int Planned) : Reason { public override string Code => "too-few-runs"; }

    /// <summary>The scatter would do if the mean lay better: set it.</summary>
    public sealed record CentreOff(Pressure Mean, Pressure Aim) : Reason { public override string Code => "centre-off"; }

    /// <summary>This scatter cannot be shown to lie inside with so many runs, even centred; or where the mean lies, when it is as good as centred.</summary>
    public sealed record ScatterTooLarge(Pressure StandardDeviation, Pressure LargestThatPasses) : Reason { public override string Code => "scatter-too-large"; }

    /// <summary>The guards eat the window, or so much of it that a usual scatter has no room.</summary>
    public sealed record DeviceTooCoarse(Pressure GuardsTogether, Pressure Window) : Reason { public override string Code => "device-too-coarse"; }

    /// <summary>The planned runs left the series undecided, and more were declared: how many, and how likely they are to decide (0 to 1).</summary>
    public sealed record ExtensionDue(int MoreRuns, double Chance) : Reason { public override string Code => "extension-due"; }

    /// <summary>What would decide it: a new series of so many runs, and how likely that is (0 to 1).</summary>
    public sealed record LongerSeriesWouldDecide(int Runs, double Chance) : Reason { public override string Code => "longer-series"; }

    /// <summary>No series of up to <paramref name="Tried"/> runs would probably decide it.</summary>
    public sealed record NoSeriesWouldDecide(int Tried) : Reason { public override string Code => "no-series-would-decide"; }

    /// <summary>Under the rule that every run stays inside the guarded limits: one that does not.</summary>
    public sealed record RunInGuard(int Run, Pressure Peak, LimitSide Side, Pressure Guarded) : Reason { public override string Code => "run-in-guard"; }

    /// <summary>Under the rule that every run stays inside the guarded limits: all do.</summary>
    public sealed record EveryRunInside : Reason { public override string Code => "every-run-inside"; }

    /// <summary>Under the two-sided rule: the interval lies inside the guarded limits.</summary>
    public sealed record IntervalInside : Reason { public override string Code => "interval-inside"; }

    /// <summary>All readings are equal: the device's steps hide the scatter.</summary>
    public sealed record EqualReadings(Pressure Value) : Reason { public override string Code => "equal-readings"; }

    /// <summary>The rule chosen for the model is not met; the parts say where.</summary>
    public sealed record RuleNotMet(string Rule) : Reason { public override string Code => "rule-not-met"; }
}

/// <summary>Something a screen noticed.</summary>
/// <param name="Code"><c>grubbs</c>, <c>several-apart</c>, <c>trend</c>, <c>neighbours</c>, <c>jump</c>, <c>drift</c>, <c>not-normal</c> ...</param>
/// <param name="Run">1-based, where it is about one run.</param>
/// <param name="PValue">Chance by nothing, adjusted for all screens together, 0 to 1.</param>
public sealed record Flag(string Code, int? Run, double PValue, string Text);
