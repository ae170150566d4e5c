using System.Collections.Immutable;

namespace Ramwright.Bench.Stroke;

/// <summary>One tolerance of a method: processor time of a stroke in seconds, steps, and by how much the worst event time is off in seconds; infinite where an event is missing or the run failed.</summary>
internal readonly record struct WorkPoint(double Tolerance, double Seconds, int Steps, int Refused, double OffSeconds);

/// <summary>What a method pays for which accuracy.</summary>
internal sealed record WorkPrecision(string Name, ImmutableArray<WorkPoint> Points)
{
    /// <summary>The cheapest point whose events, and those of every tighter tolerance, are off by no more than asked (seconds): a single lucky one does not count.</summary>
    public WorkPoint? At(double askedSeconds)
    {
        WorkPoint? best = null;
        foreach (var point in Points.OrderBy(p => p.Tolerance))
        {
            if (!(point.OffSeconds <= askedSeconds) && best is not null)
                break;
            if (point.OffSeconds <= askedSeconds && (best is not { } b || point.Seconds < b.Seconds))
                best = point;
        }

        return best;
    }

    /// <summary>The faster time of each tolerance.</summary>
    public WorkPrecision BestWith(WorkPrecision other) =>
        this with { Points = [.. Points.Zip(other.Points, (a, b) => a with { Seconds = Math.Min(a.Seconds, b.Seconds) })] };

    /// <summary>The worst difference of event times in seconds; an event that only one side has is infinitely off.</summary>
    public static double Off(ImmutableArray<double> events, ImmutableArray<double> reference) => events.Zip(reference,
        (e, r) => double.IsNaN(e) && double.IsNaN(r) ? 0 : double.IsNaN(e) || double.IsNaN(r) ? double.PositiveInfinity : Math.Abs(e - r)).Max();
}
