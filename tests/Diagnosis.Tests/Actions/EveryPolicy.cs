using Ramwright.Diagnosis.Actions;

namespace Ramwright.Diagnosis.Tests.Actions;

/// <summary>
/// The oracle: tries every act everywhere, with no bound and nothing kept. It carries the belief along as weights of (case, faults still there), splits them when a
/// repair may or may not take, and strikes out what a failed run rules out.
/// </summary>
internal sealed class EveryPolicy(ActionProblem problem)
{
    private readonly record struct Particle(int Case, int Left);

    public double Cost()
    {
        var belief = new Dictionary<Particle, double>();
        for (var h = 0; h < problem.Cases.Length; h++)
            belief[new(h, problem.Cases[h].Sum(f => 1 << f))] = problem.Weights[h];
        return Value(belief, done: 0, looked: 0, open: 0, pending: false, failed: false);
    }

    private double Value(Dictionary<Particle, double> belief, int done, int looked, ulong open, bool pending, bool failed)
    {
        var weight = belief.Values.Sum();
        if (weight <= 1e-15)
            return 0;
        var best = weight * problem.GiveUp;
        if (pending || !failed)
        {
            var still = belief.Where(b => b.Key.Left != 0).ToDictionary(b => b.Key, b => b.Value);
            best = Math.Min(best, weight * (Closing(open) + problem.Test) + Value(still, done, looked, 0, false, true));
        }

        for (var a = 0; a < problem.Remedies.Length; a++)
        {
            if ((done >> a & 1) == 1)
                continue;
            var remedy = problem.Remedies[a];
            var after = new Dictionary<Particle, double>();
            foreach (var (particle, share) in belief)
                Mend(after, particle, share, remedy.Mends, 0);
            best = Math.Min(best, weight * (Opening(open, remedy.Opens) + remedy.Work) + Value(after, done | 1 << a, looked, open | remedy.Opens, true, failed));
        }

        for (var l = 0; l < problem.Looks.Length; l++)
        {
            var look = problem.Looks[l];
            if ((looked >> l & 1) == 1 || (looked & look.Excludes) != 0 || look.Live && pending)
                continue;
            var paid = weight * (look.Work + (look.Live ? Closing(open) : Opening(open, look.Opens)));
            foreach (var likelihood in look.Likelihood)
                paid += Value(belief.ToDictionary(b => b.Key, b => b.Value * likelihood[b.Key.Case]), done, looked | 1 << l, look.Live ? 0 : open | look.Opens, pending, failed);
            best = Math.Min(best, paid);
        }

        return best;
    }

    private static void Mend(Dictionary<Particle, double> after, Particle particle, double share, double[] mends, int fault)
    {
        if (share == 0)
            return;
        if (fault == mends.Length)
        {
            after[particle] = after.GetValueOrDefault(particle) + share;
            return;
        }

        if ((particle.Left >> fault & 1) == 0)
        {
            Mend(after, particle, share, mends, fault + 1);
            return;
        }

        Mend(after, particle with { Left = particle.Left & ~(1 << fault) }, share * mends[fault], mends, fault + 1);
        Mend(after, particle, share * (1 - mends[fault]), mends, fault + 1);
    }

    private double Opening(ulong from, ulong to) => problem.Opening.Where((_, s) => ((to & ~from) >> s & 1) == 1).Sum();

    private double Closing(ulong open) => problem.Closing.Where((_, s) => (open >> s & 1) == 1).Sum();
}
