namespace Ramwright.Hydraulics.Phases;

/// <summary>Phases and moments in words.</summary>
public static class PhaseWords
{
    private static readonly string[] s_counted = ["", "", "second ", "third ", "fourth ", "fifth "];

    /// <summary><c>build</c>, <c>second build</c>, ... , <c>build 6</c>.</summary>
    public static string Of(StrokePhase phase)
    {
        ArgumentNullException.ThrowIfNull(phase);
        var name = phase.Kind.ToString().ToLowerInvariant();
        return phase.Nth < s_counted.Length ? s_counted[phase.Nth] + name : $"{name} {phase.Nth}";
    }

    public static string Of(PhaseEventKind kind) => kind switch
    {
        PhaseEventKind.TriggerPulled => "trigger pulled",
        PhaseEventKind.LoadTouched => "load touched",
        PhaseEventKind.DiesClosed => "dies closed",
        PhaseEventKind.TriggerReleased => "trigger let go",
        PhaseEventKind.TriggerPulledAgain => "trigger pulled again",
        PhaseEventKind.ReliefOpened => "relief opened",
        PhaseEventKind.MotorOff => "motor off",
        PhaseEventKind.ReliefClosed => "relief closed",
        PhaseEventKind.RamHome => "ram home",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such moment."),
    };
}
