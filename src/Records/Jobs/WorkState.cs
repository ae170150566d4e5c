using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.Setting;

namespace Ramwright.Records.Jobs;

/// <summary>The strip plan that stands and its signed steps, by 0-based place.</summary>
public sealed record StripState(Entry<StripPlanned> Planned)
{
    public ImmutableSortedDictionary<int, Entry<StripStepSigned>> Signed { get; init; } = ImmutableSortedDictionary<int, Entry<StripStepSigned>>.Empty;

    public StripPlan Plan => Planned.What.Plan;

    /// <summary>The first step not signed; null when all are.</summary>
    public int? Next => Steps.FirstOpen(Plan.Steps.Length, Signed.ContainsKey);
}

/// <summary>The rebuild plan that stands and its signed steps, by 0-based place.</summary>
public sealed record RebuildState(Entry<RebuildPlanned> Planned)
{
    public ImmutableSortedDictionary<int, Entry<RebuildStepSigned>> Signed { get; init; } = ImmutableSortedDictionary<int, Entry<RebuildStepSigned>>.Empty;

    public RebuildPlan Plan => Planned.What.Plan;

    /// <summary>The first step not signed; null when all are.</summary>
    public int? Next => Steps.FirstOpen(Plan.Steps.Length, Signed.ContainsKey);
}

/// <summary>The quote that stands and the customer's answer to it.</summary>
public sealed record QuoteState(Entry<QuoteMade> Made, Entry<QuoteAnswered>? Answer);

/// <summary>Where the relief screw stands, counted from as-found, and the runs read on the way.</summary>
public sealed record SettingState
{
    public static SettingState AsFound { get; } = new();

    /// <summary>All turns together; clockwise is positive.</summary>
    public Angle Screw { get; init; }

    /// <summary>Each run with the screw position at which it was read.</summary>
    public ImmutableList<SettingRunEntry> Runs { get; init; } = [];

    public ImmutableList<Entry<ReliefTurned>> Turns { get; init; } = [];

    /// <summary>Null while not locked, or once turned again.</summary>
    public Entry<ReliefLocked>? Locked { get; init; }
}

/// <summary>A setting run as recorded.</summary>
public sealed record SettingRunEntry(Entry<SettingPeakRead> Read, Angle Screw)
{
    /// <summary>What the advisor takes.</summary>
    public SettingRun Run => new(Screw, Read.What.Peak);
}

internal static class Steps
{
    public static int? FirstOpen(int count, Func<int, bool> signed)
    {
        for (var step = 0; step < count; step++)
        {
            if (!signed(step))
                return step;
        }

        return null;
    }
}
