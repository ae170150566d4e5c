namespace Ramwright.Setting.Belief;

/// <summary>Lost motion between the screw and the spring's seat: the play operator of hysteresis.</summary>
/// <param name="WidthTurns">Lost at a full turn back, in turns, zero or more.</param>
/// <param name="AsFoundTurns">Where the seat stands when the screw is as found: −width (a clockwise turn answers at once) to 0 (it first loses the whole width).</param>
/// <param name="Share">Weight before any run.</param>
/// <remarks>u ← min(x, max(x − width, u)): M. Brokate and J. Sprekels, Hysteresis and Phase Transitions (Springer 1996), 2.1 (section from memory).</remarks>
internal readonly record struct Play(double WidthTurns, double AsFoundTurns, double Share)
{
    private const double StepDegrees = 7.5;

    /// <summary>Where the seat stands after the screw went to <paramref name="screw"/>, in turns.</summary>
    public double Follow(double seat, double screw) => Math.Min(screw, Math.Max(screw - WidthTurns, seat));

    /// <summary>Seat positions for a history of screw positions that starts as found, in turns.</summary>
    public double[] Seats(ReadOnlySpan<double> screws)
    {
        var seats = new double[screws.Length];
        var seat = Follow(AsFoundTurns, 0);
        for (var i = 0; i < screws.Length; i++)
            seats[i] = seat = Follow(seat, screws[i]);
        return seats;
    }

    /// <summary>Widths evenly from nothing to a quarter past the largest expected, and for each where the seat may stand.</summary>
    public static Play[] Grid(double largestTurns)
    {
        if (largestTurns == 0)
            return [new(0, 0, 1)];
        var widths = Math.Clamp((int)Math.Ceiling(1.25 * largestTurns * 360 / StepDegrees), 2, 8);
        var share = 1.0 / (widths + 1);
        var grid = new List<Play> { new(0, 0, share) };
        for (var k = 1; k <= widths; k++)
        {
            var width = 1.25 * largestTurns * k / widths;
            foreach (var part in (ReadOnlySpan<double>)[0, 0.5, 1])
                grid.Add(new(width, -part * width, share / 3));
        }

        return [.. grid];
    }
}
