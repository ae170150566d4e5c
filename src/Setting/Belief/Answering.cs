namespace Ramwright.Setting.Belief;

/// <summary>How the pressure may answer the screw.</summary>
internal enum AnswerKind
{
    /// <summary>As it should.</summary>
    Follows,

    /// <summary>As it should, but one reading is wrong: misread, mistyped, a run cut short.</summary>
    OneOddReading,

    /// <summary>Against what is known of the direction.</summary>
    Backwards,

    /// <summary>Not at all: spring, poppet, seat.</summary>
    Dead,

    /// <summary>Up to a position and not beyond: something else stops the run first.</summary>
    EndsAbove,
}

/// <summary>One supposition about the answer, with its chance before any run.</summary>
/// <param name="EndTurns">Seat position past which raising has no effect; for <see cref="AnswerKind.EndsAbove"/>.</param>
/// <param name="Odd">0-based run that is left out; −1 for none.</param>
internal readonly record struct Answering(AnswerKind Kind, double Share, double EndTurns = 0, int Odd = -1)
{
    private const double DeadShare = 0.03, EndsShare = 0.02, OddShare = 0.0005; // our choice: faults that a repair shop does meet; a slip in two thousand readings
    private const double WithoutData = 0.1; // of these without relief data: a small gain looks like none, and is not
    private const double BackwardsModel = 0.0005, BackwardsWithout = 0.01;
    private const int MostLooked = 8; // last runs among which an end or an odd reading is looked for

    /// <summary>Seat position as far as the pressure answers to it.</summary>
    public double Effective(double seat, int raisingSign) => Kind switch
    {
        AnswerKind.Dead => 0,
        AnswerKind.EndsAbove => raisingSign > 0 ? Math.Min(seat, EndTurns) : Math.Max(seat, EndTurns),
        _ => seat,
    };

    /// <summary>All suppositions for a history of seat positions.</summary>
    public static List<Answering> All(ReadOnlySpan<double> seats, ReliefPrior prior)
    {
        var backwards = prior.FromModel ? BackwardsModel : BackwardsWithout;
        double dead = DeadShare * (prior.FromModel ? 1 : WithoutData), endsShare = EndsShare * (prior.FromModel ? 1 : WithoutData);
        var first = Math.Max(0, seats.Length - MostLooked);
        var odd = seats.Length < 2 ? 0 : OddShare * (seats.Length - first);
        List<Answering> all = [new(AnswerKind.Follows, 1 - odd - backwards - dead - endsShare), new(AnswerKind.Backwards, backwards), new(AnswerKind.Dead, dead)];
        for (var run = first; odd > 0 && run < seats.Length; run++)
            all.Add(new(AnswerKind.OneOddReading, OddShare, Odd: run));
        var ends = new List<double>();
        for (var run = Math.Max(1, first); run < seats.Length; run++)
        {
            if ((seats[run] - seats[run - 1]) * prior.RaisingSign > 0)
                ends.AddRange([seats[run - 1], seats[run - 1] + (seats[run] - seats[run - 1]) / 3, seats[run - 1] + 2 * (seats[run] - seats[run - 1]) / 3]);
        }

        foreach (var end in ends)
            all.Add(new(AnswerKind.EndsAbove, endsShare / ends.Count, end));
        return all;
    }
}
