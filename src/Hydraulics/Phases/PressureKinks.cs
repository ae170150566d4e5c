using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Where pressure leaves the line of the advance, and where it leaves the curve of a connector.</summary>
/// <param name="Touched">When pressure first leaves the advance: the dies close, or touch a connector; null when it never does.</param>
/// <param name="Closed">When the dies close; null when they do not.</param>
/// <param name="HasConnector">Whether a connector stood between them.</param>
/// <param name="WithinSeconds">How far off the moments may be.</param>
internal sealed record PressureKinks(double? Touched, double? Closed, bool HasConnector, double WithinSeconds)
{
    private const double SlopeLength = 0.04, FineLength = 0.005, Restart = 0.15, Settled = 0.03;
    private const double LeavesShare = 0.08, ConnectorRatio = 2.5, LeastRisePascals = 8e5, LeastSlope = 15e5;

    /// <summary>Finds the kinks in the times when the motor runs, up to the fall of the relief or the end of the last run.</summary>
    public static PressureKinks Find(SignalGrid pressure, ImmutableArray<MotorRun> runs) => new Search(pressure, runs).Answer();

    private sealed class Search(SignalGrid pressure, ImmutableArray<MotorRun> runs)
    {
        private readonly int _long = pressure.Steps(SlopeLength), _fine = pressure.Steps(FineLength);

        private double SlopeNoise => 6 * pressure.Noise * Math.Sqrt(2.0 / _long) / (_long * pressure.StepSeconds);

        public PressureKinks Answer()
        {
            var within = Math.Max(0.01, 2 * pressure.StepSeconds);
            if (runs.Length == 0)
                return new(null, null, HasConnector: false, within);
            var steepest = Steepest(pressure.IndexOf(runs[0].FromSeconds) + pressure.Steps(Settled));
            if (LeavesAdvance(steepest) is not { } leaves)
                return new(null, null, HasConnector: false, within);
            var touched = Refined(leaves, RunStart(leaves));
            return SecondKink(touched) is { } second
                ? new(pressure.SecondsAt(touched), pressure.SecondsAt(second), HasConnector: true, within)
                : new(pressure.SecondsAt(touched), pressure.SecondsAt(touched), HasConnector: false, within);
        }

        /// <summary>Steepest slope in the runs from a step on.</summary>
        private double Steepest(int from)
        {
            var steepest = 0.0;
            foreach (var i in Running(0, 0).Where(i => i >= from + _long))
                steepest = Math.Max(steepest, pressure.Slope(i, _long));
            return steepest;
        }

        /// <summary>The first step at which pressure climbs for good, after it has stood once (on the spring) or from the start.</summary>
        private int? LeavesAdvance(double steepest)
        {
            var least = Math.Max(Math.Max(LeavesShare * steepest, SlopeNoise), LeastSlope);
            var stood = false;
            foreach (var i in Running(Settled, _long))
            {
                if (pressure.Slope(i, _long) < least)
                {
                    stood = true;
                    continue;
                }

                var rise = pressure.Mean(i + (2 * _long), i + (3 * _long)) - pressure.Mean(i - _long, i);
                if (stood && rise > Math.Max(LeastRisePascals, 10 * pressure.Noise / Math.Sqrt(_long)) && pressure.Slope(i + _long, _long) > least)
                    return i;
            }

            return null;
        }

        /// <summary>Back from a step on the climb to where fine means still lie on the line before it.</summary>
        private int Refined(int climbing, int runStart)
        {
            var to = climbing - _long;
            var from = Math.Max(runStart, to - pressure.Steps(0.6));
            if (to - from < 3 * _fine)
                return climbing;
            var (atFrom, perStep, scatter) = pressure.Line(from, to, _fine);
            var limit = Math.Max(3 * scatter, 0.5e5);
            var at = climbing + (_long / 2);
            while (at > to && pressure.Around(at, _fine) - (atFrom + ((at - from) * perStep)) > limit)
                at--;
            return at;
        }

        /// <summary>Where the slope jumps up after it had fallen off: the dies close on a connector.</summary>
        private int? SecondKink(int touched)
        {
            var steps = Running(Restart, _long).Where(i => i > touched + (2 * _long)).ToList();
            if (steps.Count == 0)
                return null;
            var flattest = steps.MinBy(i => pressure.Slope(i, _long));
            var flat = Math.Max(pressure.Slope(flattest, _long), SlopeNoise / 6);
            var before = Running(0, _long).Where(i => i > touched && i <= flattest).Select(i => pressure.Slope(i, _long)).DefaultIfEmpty(0).Max();
            var after = Running(Settled, 0).Where(i => i > flattest).ToList();
            var steepest = after.Select(i => pressure.Slope(i, _long)).DefaultIfEmpty(0).Max();
            if (steepest < ConnectorRatio * flat || steepest < 1.5 * before || steepest < LeastSlope)
                return null;
            var climbing = after.First(i => pressure.Slope(i, _long) > flat + (0.3 * (steepest - flat)));
            return Refined(climbing, Math.Max(RunStart(climbing), climbing - (6 * _long)));
        }

        private int RunStart(int step)
        {
            foreach (var run in runs)
            {
                if (step <= pressure.IndexOf(run.ToSeconds) + _long)
                    return pressure.IndexOf(run.FromSeconds) + pressure.Steps(0.06);
            }

            return step;
        }

        /// <summary>Steps in the runs, from a while after each start, leaving some at both ends free for slopes.</summary>
        private IEnumerable<int> Running(double afterStart, int margin)
        {
            foreach (var run in runs)
            {
                var from = pressure.IndexOf(run.FromSeconds + afterStart) + margin;
                var to = pressure.IndexOf(run.ToSeconds) - margin;
                for (var i = from; i <= to; i++)
                    yield return i;
            }
        }
    }
}
