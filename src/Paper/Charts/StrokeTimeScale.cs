using System.Collections.Immutable;

namespace Ramwright.Paper.Charts;

/// <summary>Time across a stroke chart. In phases, each gets room by the cube root of its length: five seconds of pause get some eight times the room of ten milliseconds of opening.</summary>
internal sealed class StrokeTimeScale
{
    private readonly ImmutableArray<(double Seconds, double X)> corners;

    public StrokeTimeScale(StrokeChartInput input, double left, double right)
    {
        var (from, to) = (input.Rows[0].Seconds, input.Rows[^1].Seconds);
        ImmutableArray<double> ends = [from, .. input.Phases.Select(p => p.ToSeconds).Where(s => s > from && s < to).Order().Distinct(), to];
        var room = ends.Zip(ends.Skip(1), (a, b) => input.Phases.IsEmpty ? b - a : Math.Cbrt(b - a)).ToList();
        var made = ImmutableArray.CreateBuilder<(double, double)>();
        var x = left;
        for (var i = 0; i < ends.Length; i++)
        {
            made.Add((ends[i], x));
            x += i < room.Count ? room[i] / room.Sum() * (right - left) : 0;
        }

        corners = made.ToImmutable();
        IsEven = input.Phases.IsEmpty;
    }

    public bool IsEven { get; }

    /// <summary>Ends of the pieces of even time.</summary>
    public IEnumerable<double> Ends => corners.Select(c => c.Seconds);

    public double X(double seconds)
    {
        var i = 1;
        while (i < corners.Length - 1 && seconds > corners[i].Seconds)
            i++;
        var (a, b) = (corners[i - 1], corners[i]);
        return a.X + ((seconds - a.Seconds) / (b.Seconds - a.Seconds) * (b.X - a.X));
    }
}
