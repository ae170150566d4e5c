using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Reads a recorded stroke: figures of the tool with limits, faults with reasons, and which recording would tell more.</summary>
public static class StrokeIdentifier
{
    /// <summary>Reads a recording of pressure, battery current or both.</summary>
    /// <param name="recording">One stroke, from standstill if possible.</param>
    /// <param name="tool">Service data of the sound tool.</param>
    /// <param name="sensorSeconds">Time constant of the sensor that was used, above 0 to 1 s; null: as in the service data.</param>
    /// <param name="reliefWindowPascals">Opening pressures that are asked, lowest and highest; null: 3 % around the set pressure.</param>
    public static IdentificationAnswer Read(Recording recording, StrokeParameters tool, double? sensorSeconds = null, (double Least, double Most)? reliefWindowPascals = null)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(tool);
        if (sensorSeconds is { } lag and not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(sensorSeconds), lag, "A sensor's time constant is above 0 and at most 1 s.");
        if (recording.Pascals is null && recording.Amperes is null)
            return new IdentificationAnswer.CannotTell("neither pressure nor current is in the recording", WholeStroke);
        if (recording.Seconds.Length < 20 || recording.RowsPerSecond < 20)
            return new IdentificationAnswer.CannotTell("fewer than 20 rows, or fewer than 20 per second", WholeStroke);
        var known = tool with { SensorSeconds = sensorSeconds ?? tool.SensorSeconds };
        var signal = StrokeSignal.Of(recording);
        var marks = StrokeMarks.Of(signal, known);
        if (marks.Pulls.Count == 0)
            return new IdentificationAnswer.CannotTell(signal.Amperes is null ? "the pressure never rises" : "the motor never runs", WholeStroke);
        var (least, most) = reliefWindowPascals ?? FaultNaming.UsualWindow(tool.ReliefPascals);
        if (signal.Pascals is null)
            return CurrentAlone.Read(signal, marks, known, least, most);
        var evidence = StrokeEvidence.Of(signal, signal.Amperes ?? VirtualCurrent.Of(signal, marks, known), marks, known);
        if (marks.Foot < 0 && marks.Pulls.Sum(p => p.Length) * signal.Step < 0.5)
            return new IdentificationAnswer.CannotTell("the motor runs for less than half a second and no pressure is built", WholeStroke);
        var fits = StrokeFit.All(evidence);
        var best = fits.MaxBy(f => f.LogEvidence)!;
        var findings = Findings.Of(evidence, fits, evidence.TopIsMissing ? null : OpeningFit.Of(evidence, best) ?? CoarseOpening.Of(evidence));
        return new IdentificationAnswer.Told(ParameterTable.Of(findings), FaultNaming.Of(findings, least, most), Curve(evidence, best), NextRecording.Of(findings));
    }

    private const string WholeStroke = "one whole stroke from standstill until the ram is home, pressure and battery current at 1,000 rows per second";

    private static ImmutableArray<FittedPoint> Curve(StrokeEvidence evidence, FittedLeaks best)
    {
        var points = new List<FittedPoint>();
        for (var build = 0; build < evidence.Builds.Count; build++)
        {
            var rows = evidence.Builds[build].Rise.Rows;
            var reading = new double[rows.Length];
            best.Problem.Reading(build, best.Best.Unknowns, reading);
            for (var i = 0; i < reading.Length; i++)
                points.Add(new(evidence.Signal.Seconds(rows.From + i), reading[i]));
        }

        for (var pause = 0; pause < evidence.Pauses.Count; pause++)
        {
            var part = evidence.Pauses[pause];
            var pascals = new double[part.Pascals.Length];
            best.Problem.Pause(pause, best.Best.Unknowns, pascals);
            for (var i = 0; i < pascals.Length; i++)
                points.Add(new(part.FromSeconds + part.Decay.Seconds[i], pascals[i]));
        }

        return [.. points.OrderBy(p => p.Seconds)];
    }
}
