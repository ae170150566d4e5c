using CsCheck;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting.Tests.Belief;

public sealed class PlayTests
{
    // Found with the play on the far side: clockwise loses 30° first; a turn back by 30° loses all of it; and so on. By hand.
    [Fact]
    public void A_turn_back_loses_the_play_and_a_turn_on_loses_nothing()
    {
        var play = new Play(30 / 360.0, 0, 1);
        Assert.Equal([0, 0, 60, 60, 30, 30], play.Seats([0, 30 / 360.0, 90 / 360.0, 60 / 360.0, 30 / 360.0, 60 / 360.0]).Select(s => Math.Round(360 * s, 9)));
    }

    [Fact]
    public void The_seat_never_leaves_the_play_and_never_moves_more_than_the_screw() =>
        Gen.Select(Gen.Double[0, 0.2], Gen.Double[0, 1], Gen.Double[-2, 2].Array[1, 12]).ForAll((width, part, screws) =>
        {
            screws[0] = 0;
            var seats = new Play(width, -part * width, 1).Seats(screws);
            for (var i = 0; i < screws.Length; i++)
            {
                Assert.InRange(seats[i], screws[i] - width - 1e-12, screws[i] + 1e-12);
                if (i > 0)
                    Assert.True(Math.Abs(seats[i] - seats[i - 1]) <= Math.Abs(screws[i] - screws[i - 1]) + 1e-12);
            }
        });

    [Fact]
    public void The_shares_of_the_grid_add_up()
    {
        Assert.Equal(1, Play.Grid(30 / 360.0).Sum(p => p.Share), 1e-12);
        Assert.Equal(0, Assert.Single(Play.Grid(0)).WidthTurns);
    }
}
