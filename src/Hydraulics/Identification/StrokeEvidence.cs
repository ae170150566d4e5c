using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>What a recording has to say, cut into the parts that the fits weigh.</summary>
internal sealed class StrokeEvidence
{
    public required StrokeSignal Signal { get; init; }

    public required StrokeParameters Tool { get; init; }

    public required StrokeMarks Marks { get; init; }

    public required DriveSigns Drive { get; init; }

    public required List<BuildPart> Builds { get; init; }

    public required List<PausePart> Pauses { get; init; }

    /// <summary>Null when the dies do not close within the recording.</summary>
    public required TurnCount? Turns { get; init; }

    public required OilTable Oil { get; init; }

    /// <summary>From the first row of the first build to the foot as it was seen.</summary>
    public required double FootSeconds { get; init; }

    /// <summary>Opening pressure, read or as set.</summary>
    public required double OpeningPascals { get; init; }

    /// <summary>Dry friction by the advance.</summary>
    public required double DryNewtons { get; init; }

    /// <summary>Delivery of the sound pump without load, m³/s.</summary>
    public double SoundFlow => Tool.FilledCubicMetres / StrokeMarks.TurnSeconds(Tool);

    /// <summary>The rows about the highest pressure are missing: the sensor was at its end, or rows were lost.</summary>
    public bool TopIsMissing => Signal.Pascals is not null && Marks.Opened >= 0 && !Signal.PressureIsRead.AsSpan(Marks.Opened, Math.Min(4, Signal.Count - Marks.Opened)).ToArray().All(read => read);

    /// <summary>Each stroke of the pump can be followed.</summary>
    public required bool TurnsAreSeen { get; init; }

    public static StrokeEvidence Of(StrokeSignal signal, double[] amperes, StrokeMarks marks, StrokeParameters tool)
    {
        var drive = DriveSigns.Of(signal, amperes, marks, tool);
        var seen = signal.Step < 0.22 * StrokeMarks.TurnSeconds(tool) && signal.Pascals is not null && marks.Closed >= 0 && StrokeMarks.PulsesShow(signal, LongestRise(signal, marks), tool);
        var closedVolume = tool.DeadCubicMetres + tool.RamSquareMetres * tool.StrokeMetres;
        var oil = new OilTable(tool.Oil);
        var (builds, pauses) = (new List<BuildPart>(), new List<PausePart>());
        var pausesByRow = marks.Pauses(signal).ToList();
        foreach (var pause in pausesByRow)
        {
            if (signal.Pascals is null || marks.Foot < 0 || pause.From < marks.Foot || StrokeMarks.Mean(signal.Pascals!, pause.From, pause.From + 5) < 60e5)
                continue;
            pauses.Add(PauseOf(signal, pause, marks.Closed >= 0 && pause.From > marks.Closed ? closedVolume : VolumeAt(signal, marks, tool, pause.From), tool, oil));
        }

        foreach (var pull in marks.Pulls)
        {
            if (signal.Pascals is null || marks.Closed < 0 || pull.To < marks.Closed || (marks.Opened >= 0 && pull.From > marks.Opened))
                continue;
            if (BuildOf(signal, amperes, drive.Charge, marks, pull, pausesByRow, closedVolume, tool, oil, seen) is { } build)
                builds.Add(build);
        }

        var opening = marks.Opened >= 0 && signal.Pascals is not null ? Math.Max(0.3 * tool.ReliefPascals, signal.Pascals[marks.Opened]) : tool.ReliefPascals;
        return new StrokeEvidence
        {
            Signal = signal,
            Tool = tool,
            Marks = marks,
            Drive = drive,
            Oil = oil,
            Builds = builds,
            Pauses = pauses,
            Turns = marks.Closed < 0 ? null : TurnsOf(signal, amperes, drive.Charge, marks, tool),
            FootSeconds = builds.Count > 0 && builds[0].Rise.FromFoot ? (marks.Foot - builds[0].Rise.Rows.From) * signal.Step : 0,
            OpeningPascals = opening,
            DryNewtons = Math.Max(0, AdvanceFriction(marks, tool)),
            TurnsAreSeen = seen,
        };
    }

    /// <summary>Rows of the longest pull with the dies closed, up to the opening.</summary>
    private static Span LongestRise(StrokeSignal signal, StrokeMarks marks) =>
        marks.Pulls.Select(p => new Span(Math.Max(p.From + signal.Rows(0.05), marks.Closed), marks.Opened < 0 ? p.To : Math.Min(p.To, marks.Opened))).MaxBy(s => s.Length);

    /// <summary>Force that the advance needs beyond spring and speed, N: pressure × area less the spring near the end of its travel.</summary>
    public static double AdvanceFriction(StrokeMarks marks, StrokeParameters tool) =>
        marks.AdvancePascals * tool.RamSquareMetres * (1 - tool.SealFrictionShare) - tool.SpringPreloadNewtons - 0.95 * tool.SpringNewtonsPerMetre * tool.StrokeMetres;

    private static PausePart PauseOf(StrokeSignal signal, Span rows, double volume, StrokeParameters tool, OilTable oil)
    {
        var bin = signal.Rows(0.04);
        var (seconds, means) = (new List<double>(), new List<double>());
        for (var row = rows.From; row + bin - 1 <= rows.To && seconds.Count < 2000; row += bin)
        {
            seconds.Add((row - rows.From + 0.5 * (bin - 1)) * signal.Step);
            means.Add(StrokeMarks.Mean(signal.Pascals!, row, row + bin - 1));
        }

        return new PausePart(new PauseDecay(tool, oil, volume, [.. seconds]), [.. means], signal.Seconds(rows.From)) { DeviationPascals = Math.Max(0.15e5, signal.NoisePascals / Math.Sqrt(bin)) };
    }

    private static BuildPart? BuildOf(StrokeSignal signal, double[] amperes, double[] charge, StrokeMarks marks, Span pull, List<Span> pauses, double volume, StrokeParameters tool, OilTable oil, bool seen)
    {
        var turn = signal.Rows(StrokeMarks.TurnSeconds(tool));
        var fromFoot = !marks.Connector && pull.From <= marks.Foot;
        var from = fromFoot ? Math.Max(pull.From, marks.Foot - Math.Max(turn, 4)) : Math.Max(pull.From + signal.Rows(0.03), marks.Closed + 1);
        if (!fromFoot && signal.Amperes is null)
            from = Math.Max(from, pull.From + signal.Rows(0.12)); // how the motor runs up against pressure is only guessed
        if (!fromFoot)
        {
            while (from < pull.To && amperes[from] > 0.9 * tool.CurrentLimitAmperes)
                from++;
            from += 2;
        }

        var to = marks.Opened >= 0 && marks.Opened <= pull.To + turn ? Math.Min(marks.Opened - 3, pull.To) : pull.To - 2;
        if (to - from < Math.Max(4, turn))
            return null;
        var pause = pauses.LastOrDefault(p => p.To <= pull.From);
        var fromPause = pause.To > 0 && pause.From > marks.Foot;
        var first = fromFoot ? marks.AdvancePascals : StrokeMarks.Mean(signal.Pascals!, from - 1, from + 1);
        return new BuildPart(
            new PoweredBuild(signal, tool, oil, charge, new(from, to), volume, !seen, fromFoot), first,
            fromPause ? StrokeMarks.Mean(signal.Pascals!, pause.From, pause.From + signal.Rows(0.02)) : 0,
            fromPause ? StrokeMarks.Mean(signal.Pascals!, pause.To - signal.Rows(0.05), pause.To) : 0)
        { DeviationPascals = Math.Max(2e5, signal.NoisePascals) };
    }

    private static TurnCount TurnsOf(StrokeSignal signal, double[] amperes, double[] charge, StrokeMarks marks, StrokeParameters tool)
    {
        double free = 0, used = 0, limited = 0, pumping = 0, standing = 0;
        var coasts = 0;
        var pascals = signal.Pascals ?? [.. Enumerable.Repeat(marks.AdvancePascals, signal.Count)];
        foreach (var pull in marks.Pulls)
        {
            if (pull.From >= marks.Closed)
                break;
            var end = Math.Min(pull.To, marks.Closed);
            for (var row = pull.From; row < end; row++)
            {
                if (amperes[row] > 0.96 * tool.CurrentLimitAmperes)
                    limited += signal.Step;
                else
                    (free, used) = (free + signal.Step, used + charge[row + 1] - charge[row]);
                pumping += signal.Step * Math.Max(0, pascals[row]);
            }

            coasts += pull.To < marks.Closed ? 1 : 0;
        }

        for (var row = marks.Pulls[0].From; row < marks.Closed; row++)
            standing += signal.Step * Math.Max(0, pascals[row]);
        return new TurnCount(tool, free, used, limited, 1.2 * coasts, pumping, standing - pumping, StrokeMarks.Mean(pascals, marks.Closed - 2, marks.Closed), coasts > 0 || marks.Connector ? 0.012 : signal.Pascals is null ? 0.008 : 0.003);
    }

    /// <summary>Oil behind the ram at a row before the dies close, by the turns so far of a sound pump.</summary>
    private static double VolumeAt(StrokeSignal signal, StrokeMarks marks, StrokeParameters tool, int row)
    {
        var running = 0.0;
        foreach (var pull in marks.Pulls)
            running += Math.Max(0, Math.Min(pull.To, row) - pull.From) * signal.Step;
        return tool.DeadCubicMetres + Math.Min(tool.RamSquareMetres * tool.StrokeMetres, running / StrokeMarks.TurnSeconds(tool) * tool.FilledCubicMetres);
    }
}
